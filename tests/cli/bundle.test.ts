import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { runIn } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const bundle = fileURLToPath(new URL('../../dist/linewright.cjs', import.meta.url));

beforeAll(() => buildBundles(['cli']));

const spawned = (words: readonly string[]): Promise<{ code: number; out: string; err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [bundle, ...words], { cwd: examples, encoding: 'utf8', maxBuffer: 1e8 }, (error, out, err) => done({ code: error === null ? 0 : Number(error.code), out, err }));
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
