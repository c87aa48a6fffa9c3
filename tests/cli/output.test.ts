import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inShell } from './program.ts';
import { shortBury, soundLine, world } from './world.ts';

const full = 'linewright: the output could not be written: no space left on device\n';

test.each([
  [['check'], 'exec "$@" >/dev/full', full],
  [['--help'], 'exec "$@" >/dev/full', full],
  [['check', 'gone.rig'], 'exec "$@" 2>/dev/full', ''],
  [['check'], 'mkdir x; cd x; rmdir ../x; exec "$@"', 'linewright: the present folder is not there\n'],
])('%j as %j could not be done', async (words, line, err) => {
  const { folder } = world({ 'a.rig': soundLine });
  expect(await inShell(folder, line, ...words)).toMatchObject({ code: 2, err });
});

test('a file that takes only the first part of a text is told', async () => {
  const { folder } = world({ 'a.rig': soundLine });
  expect(await inShell(folder, 'ulimit -f 2; exec "$@" >out.txt', 'rules')).toEqual({ code: 2, out: '', err: 'linewright: the output could not be written: file too large\n' });
  expect(statSync(join(folder, 'out.txt')).size).toBeGreaterThan(0);
  await inShell(folder, '"$@" >all.txt; "$@" >>all.txt', 'rules');
  const { out } = await inShell(folder, 'exec "$@"', 'rules');
  expect(readFileSync(join(folder, 'all.txt'), 'utf8')).toBe(out + out);
});

test('a closed pipe is no verdict', async () => {
  const { folder } = world({ 'a.rig': shortBury });
  const { out } = await inShell(folder, '{ "$@"; echo $? >code.txt; } | true; cat code.txt', 'check');
  expect(out).toBe('141\n');
});
