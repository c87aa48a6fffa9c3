import { symlinkSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { unreadable } from './program.ts';
import { soundLine, world } from './world.ts';

const asked: readonly (readonly string[])[] = [['sheet'], ['card', 'fix'], ['brief', 'out'], ['inspect', 'main'], ['logbook', 'main'], ['tokens'], ['tree'], ['model'], ['textconv'], ['check'], ['compare', 'a.rig']];

test('links in a circle and names that are too long are told by every command', async () => {
  const { folder, linewright } = world({ 'a.rig': soundLine });
  symlinkSync('loop.rig', join(folder, 'loop.rig'));
  const long = `${'n'.repeat(300)}.rig`;
  for (const file of ['loop.rig', long]) {
    for (const [command, ...words] of asked) {
      const { code, err } = await linewright(command!, ...words, file);
      expect([command, code, err]).toEqual([command, 2, `linewright ${command}: ${file} cannot be read\n`]);
    }
    expect(await linewright('explain', `${file}:2`)).toEqual({ code: 2, out: '', err: `linewright explain: ${file} cannot be read\n` });
  }
});

test('a folder that cannot be read is named, and the rigs beside it are judged', async () => {
  const { folder, linewright } = world({ 'fleet/a.rig': soundLine });
  unreadable(folder, 'fleet/deep');
  const { code, out, err } = await linewright('check', 'fleet', 'fleet/deep');
  expect([code, out]).toEqual([2, expect.stringContaining('1 file: nothing found; 1 could not be checked.')]);
  expect(err).toMatch(/^linewright check: fleet\/deep\/[n/]+ cannot be read\n$/);
  // What hangs on one file only passes over them.
  expect((await linewright('textconv', 'fleet/a.rig')).code).toBe(0);
});

test.each([
  ['nowhere', '--root `nowhere` is not there'],
  ['a.rig', '--root `a.rig` is not a folder'],
])('--root %s is refused', async (root, says) => {
  const { linewright } = world({ 'a.rig': soundLine });
  for (const [command, ...words] of asked) {
    if (command === 'textconv') continue;
    expect(await linewright(command!, ...words, 'a.rig', '--root', root)).toEqual({ code: 2, out: '', err: `linewright ${command}: ${says}\n` });
  }
});

test('a file that is too large for a text is told to be so', async () => {
  const { folder, linewright } = world({ 'big.rig': '', 'a.rig': `use "big.rig"\n${soundLine}` });
  truncateSync(join(folder, 'big.rig'), 2 ** 30);
  expect((await linewright('check', 'big.rig')).err).toBe('linewright check: big.rig is too large to be read\n');
  expect((await linewright('check', 'a.rig')).out).toContain('error[use-missing] `big.rig` is too large to be read\n');
});

test('what is named twice is told once', async () => {
  const { linewright } = world({ 'bad/x.rig': new Uint8Array([0x6c, 0xe9, 0x0a]), 'wide.rig': Buffer.from(soundLine, 'utf16le') });
  expect((await linewright('check', 'bad', 'bad/x.rig', 'gone.rig', './gone.rig', 'wide.rig')).err).toBe('linewright check: bad/x.rig is not text in UTF-8\nlinewright check: gone.rig is not there\nlinewright check: wide.rig is not text in UTF-8\n');
});
