import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runIn } from '../cli/world.ts';

const folder = join(import.meta.dirname, '../../examples');
const names = readdirSync(folder).filter((n) => n.endsWith('.rig')).map((n) => n.slice(0, -4));
const on = '2026-06-22';

// `npx vitest run tests/house/examples.test.ts -u` rewrites the goldens; read the difference before it is committed.
describe.each(names)('%s', (name) => {
  test('its findings', async () => {
    const { out } = await runIn(folder, ['check', `${name}.rig`, '--on', on]);
    await expect(out).toMatchFileSnapshot(join(folder, 'golden', `${name}.findings.txt`));
  });

  test('its sheet', async () => {
    const { out, code } = await runIn(folder, ['sheet', `${name}.rig`, '--on', on]);
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot(join(folder, 'golden', `${name}.sheet.txt`));
  });

  test('is in the formatter\'s layout', async () => {
    const { code, out } = await runIn(folder, ['format', '--check', `${name}.rig`]);
    expect([code, out.includes(`${name}.rig`) && code !== 0]).toEqual([0, false]);
  });
});

test('the sound rig has no finding at all', async () => {
  const { findings } = JSON.parse((await runIn(folder, ['check', 'dipper.rig', '--on', on, '--format', 'json'])).out) as { findings: { code: string }[] };
  expect(findings.map((f) => f.code)).toEqual([]);
});

describe('the US rig and its metric twin', () => {
  interface Row { block: string; id: string; value: number | { low: number; high: number } | null }
  const json = async (name: string, command: string): Promise<Record<string, unknown>> => JSON.parse((await runIn(folder, [command, name, '--on', on, '--format', 'json'])).out) as Record<string, unknown>;
  const rows = (sheet: unknown): Row[] => {
    const found: Row[] = [];
    const visit = (node: unknown, block: string): void => {
      if (Array.isArray(node)) for (const n of node) visit(n, block);
      else if (node !== null && typeof node === 'object') {
        const o = node as Record<string, unknown>;
        const own = typeof o['block'] === 'string' ? o['block'] : block;
        if (typeof o['id'] === 'string' && 'value' in o) found.push({ block: own, id: o['id'], value: o['value'] as Row['value'] });
        for (const v of Object.values(o)) visit(v, own);
      }
    };
    visit(sheet, '');
    return found;
  };

  test('come to the same verdicts at the same lines', async () => {
    const verdicts = async (name: string): Promise<string[]> => ((await json(name, 'check'))['findings'] as { code: string; severity: string; line: number }[]).map((f) => `${f.line} ${f.severity} ${f.code}`);
    const us = await verdicts('wheatear.rig');
    // The header of one file is as long as that of the other, so lines agree.
    expect(us.length).toBeGreaterThan(3);
    expect(await verdicts('wheatear-metric.rig')).toEqual(us);
  });

  test('come to the same numbers', async () => {
    const [us, metric] = [rows(await json('wheatear.rig', 'sheet')), rows(await json('wheatear-metric.rig', 'sheet'))];
    expect(us.length).toBeGreaterThan(40);
    expect(metric.map((r) => `${r.block} ${r.id}`)).toEqual(us.map((r) => `${r.block} ${r.id}`));
    const ends = (v: Row['value']): number[] => (v === null ? [] : typeof v === 'number' ? [v] : [v.low, v.high]);
    us.forEach((row, i) => {
      const [a, b] = [ends(row.value), ends(metric[i]!.value)];
      expect(b.length, row.id).toBe(a.length);
      a.forEach((x, k) => expect(Math.abs(x - b[k]!), `${row.block} ${row.id}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(x))));
    });
  });
});

test('every example has its goldens, and no golden is left over', () => {
  const goldens = readdirSync(join(folder, 'golden')).sort();
  expect(goldens).toEqual(names.flatMap((n) => [`${n}.findings.txt`, `${n}.sheet.txt`]).sort());
  expect(readFileSync(join(folder, 'golden', 'plover.findings.txt'), 'utf8')).toContain('bury-too-short');
});
