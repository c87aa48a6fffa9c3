import { execFile, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { rigText } from '../support/rig-text.ts';
import { runIn, world } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const bundle = fileURLToPath(new URL('../../dist/linewright.cjs', import.meta.url));

beforeAll(() => buildBundles(['cli']));

const spawned = (words: readonly string[], { cwd = examples, node = [] as readonly string[] } = {}): Promise<{ code: number; out: string; err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [...node, bundle, ...words], { cwd, encoding: 'utf8', maxBuffer: 1e8 }, (error, out, err) => done({ code: error === null ? 0 : Number(error.code), out, err }));
  });

test.each([
  ['check', '--on', '2026-06-22'],
  ['sheet', 'plover.rig', '--on', '2026-06-22', '--format', 'json'],
  ['explain', 'plover.rig:57', '--on', '2026-06-22'],
  ['compute', 'fid-length', 'd=10 mm'],
  ['nothing'],
])('what is shipped says what the sources say: %s', async (...words) => {
  expect(await spawned(words)).toEqual(await runIn(examples, words));
});

test('without a day it judges today', async () => {
  const { out } = await spawned(['sheet', 'practice.rig']);
  const now = new Date();
  const today = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
  expect(out).toContain(`judged as of ${today}`);
});

describe('a fleet', () => {
  const fleet = (count: number): string => world(Object.fromEntries(Array.from({ length: count }, (_, i) => [`${i % 10}/truck-${String(i).padStart(4, '0')}.rig`, rigText(60, i + 1).replace(i % 10 === 0 ? 'bury 72 d' : '', i % 10 === 0 ? 'bury 46 d' : '')]))).folder;
  const on = ['--on', '2026-06-22'];

  test('takes no more memory for more rigs', async () => {
    const cwd = fleet(600);
    // All of them at once would not fit.
    const { code, out } = await spawned(['check', ...on, '--jobs', '1'], { cwd, node: ['--max-old-space-size=44', '--max-semi-space-size=1'] });
    expect([code, /^600 files: .*$/m.exec(out)?.[0]]).toEqual([1, expect.stringContaining('60 errors')]);
  });

  test('is judged by the shipped threads as by one', async () => {
    const cwd = fleet(450);
    const one = await spawned(['check', ...on, '--jobs', '1'], { cwd });
    expect(await spawned(['check', ...on, '--jobs', '2'], { cwd })).toEqual(one);
  });

  test('of thousands of files is judged on several threads unasked, with the same bytes', async () => {
    const { folder: cwd } = world(Object.fromEntries(Array.from({ length: 2100 }, (_, i) => [`${i % 7}/${i}.rig`, `anchor tree-${i} {\n  kind  tree\n}\n`])));
    const one = await spawned(['check', ...on, '--jobs', '1'], { cwd });
    expect(one.out).toMatch(/^2100 files: /m);
    expect(await spawned(['check', ...on], { cwd })).toEqual(one);
  });

  test('a reader that has seen enough ends the program', async () => {
    const child = spawn(process.execPath, [bundle, 'check', ...on, '--jobs', '2'], { cwd: fleet(450), stdio: ['ignore', 'pipe', 'pipe'] });
    let err = '';
    child.stderr.on('data', (data: Buffer) => void (err += data.toString('utf8')));
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise((done) => void child.on('exit', done));
    expect([code, err]).toEqual([141, '']);
  });
});
