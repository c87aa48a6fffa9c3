import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { runIn, soundLine, world } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const sheet = (file: string, ...more: string[]) => runIn(examples, ['sheet', file, ...more]);

const location = z.strictObject({ file: z.string(), line: z.int().min(1), column: z.int().min(1), endLine: z.int().min(1), endColumn: z.int().min(1) });
const number = z.union([z.number(), z.strictObject({ low: z.number(), high: z.number() })]);
const source = z.strictObject({ key: z.string(), trust: z.enum(['read', 'secondary', 'memory', 'practice', 'own', 'derived']), says: z.string().min(1) });
const origin = { origin: z.enum(['written', 'assumed', 'derived', 'constant']), at: location.optional(), replace: z.string().optional(), source: source.optional(), step: z.int().min(0).optional() };
const input = z.strictObject({ symbol: z.string(), name: z.string(), value: number, unit: z.string(), display: z.string(), ...origin });
const cause = { says: z.string(), help: z.string(), at: location.optional() };
const value = z.strictObject({
  block: z.string(),
  id: z.string().regex(/^[\p{L}\p{N}]+(-[\p{L}\p{N}]+)*$/u),
  name: z.string(),
  value: number.nullable(),
  unit: z.string().nullable(),
  kind: z.string().nullable(),
  display: z.string().nullable(),
  says: z.string().optional(),
  cause: z.strictObject(cause).optional(),
  atMost: z.number().optional(),
  formula: z.string().nullable(),
  inputs: z.array(input),
  sources: z.array(source),
  assumed: z.boolean(),
  ...origin,
  origin: origin.origin.optional(),
});
const shape = z.strictObject({
  version: z.literal(1),
  file: z.string(),
  day: z.iso.date(),
  blocks: z.array(z.strictObject({ block: z.string(), at: location.optional(), checks: z.strictObject({ made: z.int(), failed: z.int(), notJudged: z.array(z.strictObject({ ...cause, checks: z.int().min(1) })) }) })),
  values: z.array(value),
  steps: z.array(z.strictObject({ calculation: z.string(), symbol: z.string(), name: z.string(), value: number, unit: z.string(), formula: z.string(), numbers: z.string(), inputs: z.array(input), sources: z.array(source).min(1), assumptions: z.array(z.string()), notes: z.array(z.string()) })),
});

const read = async (file: string) => shape.parse(JSON.parse((await sheet(file, '--format', 'json')).out));

test.each(['plover.rig', 'dipper.rig', 'wheatear.rig'])('JSON of %s has the documented shape, each value once', async (file) => {
  const { values, steps } = await read(file);
  expect(new Set(values.map((v) => `${v.block} ${v.id}`)).size).toBe(values.length);
  for (const v of values) {
    // A value is known, or it says why it is not, or it is words.
    expect([v.value !== null, v.cause !== undefined, v.value === null && v.cause === undefined && v.says !== undefined].filter(Boolean), `${v.block} ${v.id}`).toHaveLength(1);
    if (v.origin === 'derived') expect(steps[v.step!]!.formula).toBe(v.formula);
    if (v.origin === 'written') expect(v.at).toBeDefined();
    if (v.origin === 'assumed') expect([v.assumed, v.sources.length]).toEqual([true, 1]);
  }
  // Every step rests on earlier ones only.
  steps.forEach((step, i) => step.inputs.forEach((x) => x.step === undefined || expect(x.step).toBeLessThan(i)));
});

const plover = readFileSync(new URL('../../examples/plover.rig', import.meta.url), 'utf8').split('\n');

test('values by their ids', async () => {
  const { values } = await read('plover.rig');
  const of = (block: string, id: string) => values.find((v) => v.block === block && v.id === id);
  expect(of('winch bow-winch', 'usable-length')).toMatchObject({ unit: 'm', origin: 'derived', assumed: false, formula: 'U = L − K' });
  // The first layer pulls what is rated; worked by hand: 42 kN × 74 mm / 94 mm.
  expect(of('winch bow-winch', 'layer-2-pull')!.value).toBeCloseTo((42_000 * 74) / 94, 6);
  expect(of('winch bow-winch', 'layer-2-pull')!.display).toBe('33 kN');
  expect(of('line main', 'main-outboard-bury-in-diameters')!.value).toBeCloseTo(72, 9);
  expect(of('line main', 'main-strength')).toMatchObject({ value: null, cause: { says: 'how much strength heavy abrasion leaves is not measured' } });
  // Ten of twelve strands of 92 kN are the most of it.
  expect(of('line main', 'main-strength')!.atMost).toBeCloseTo((92_000 * 10) / 12, 6);
  expect(of('repair field-fix', 'tail-inboard-bury')).toMatchObject({ value: 0.46, display: '46 cm', origin: 'written', at: { line: plover.findIndex((line) => line.includes('splice  tail inboard')) + 1 } });
  expect(of('shackle bow-22', 'limit')!.display).toBe('63.7 kN (6.5 t)');
  expect(of('vehicle plover', 'weight')!.value).toBeCloseTo(2650 * 9.80665, 6);
});

test('text shows the same displays, and marks what is assumed', async () => {
  const { out, code } = await sheet('plover.rig');
  expect(code).toBe(0);
  for (const { display, cause: why } of (await read('plover.rig')).values) if (display !== null && why === undefined) expect(out).toContain(display);
  expect(out).toMatch(/^Sheet of plover\.rig, judged as of 2026-06-22\n/);
  expect(out).toMatch(/\n {4}bury needed +720 mm +bury-needed \*, 72 d\n/);
  expect(out).toMatch(/\nAssumed\n/);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
});

test('what is missing is said once with its checks', async () => {
  const { linewright } = world({ 'a.rig': soundLine.replace('  diameter  10 mm\n', '') });
  const { out } = await linewright('sheet', 'a.rig');
  expect(out).toMatch(/\[1\] diameter of `main` is not given; \d+ checks not judged; add `diameter` from the tag or the\s+spool/);
  expect(out).toMatch(/bury needed +not known +see \[\d\]/);
});

test('derivations can be read in full', async () => {
  const { out } = await sheet('plover.rig', '--derivations');
  expect(out).toContain('layer-2-pull: line pull on the layer: F_n = 33 kN');
  expect(out).toContain('numbers: F_n = 42 kN × (64 mm + 10 mm) / (64 mm + (2 × 2 − 1) × 10 mm) = 33 kN');
});

test('the same bytes every time', async () => {
  expect((await sheet('plover.rig')).out).toBe((await sheet('plover.rig')).out);
  expect((await sheet('plover.rig', '--format', 'json')).out).toBe((await sheet('plover.rig', '--format', 'json')).out);
});

test('what is not one file is refused', async () => {
  const { linewright } = world({ 'a.rig': soundLine });
  expect(await linewright('sheet')).toEqual({ code: 2, out: '', err: 'linewright sheet: this takes one file: linewright sheet FILE\n' });
  expect((await linewright('sheet', '.')).err).toBe('linewright sheet: . is a folder; name one of its rig files\n');
  expect((await linewright('sheet', 'b.rig')).err).toBe('linewright sheet: b.rig is not there\n');
});
