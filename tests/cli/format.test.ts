import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inShell, unreadable } from './program.ts';
import { soundLine, world } from './world.ts';

const loose = 'line x {\nlength 30 m\n}\n';
const laidOut = 'line x {\n  length  30 m\n}\n';

test('what cannot be written as a whole is left as it was, and is not counted', async () => {
  const long = Array.from({ length: 2000 }, (_, i) => loose.replace('x', `x${i}`)).join('');
  const { folder } = world({ 'a.rig': loose, 'long.rig': long });
  expect(await inShell(folder, 'ulimit -f 8; exec "$@"', 'format', '.')).toEqual({ code: 2, out: 'a.rig\n1 formatted, 0 left as they were.\n', err: 'linewright format: long.rig cannot be written\n' });
  expect(readFileSync(join(folder, 'long.rig'), 'utf8')).toBe(long);
  expect(readdirSync(folder)).toEqual(['a.rig', 'long.rig']);
});

test('a file keeps its mode, and a link that is named stays one', async () => {
  const { folder, linewright } = world({ 'a/x.rig': loose });
  chmodSync(join(folder, 'a/x.rig'), 0o640);
  symlinkSync('a/x.rig', join(folder, 'link.rig'));
  expect((await linewright('format', 'link.rig')).out).toBe('link.rig\n1 formatted, 0 left as they were.\n');
  expect([readFileSync(join(folder, 'a/x.rig'), 'utf8'), statSync(join(folder, 'a/x.rig')).mode & 0o777]).toEqual([laidOut, 0o640]);
  expect(lstatSync(join(folder, 'link.rig')).isSymbolicLink()).toBe(true);
});

test('nothing is written through a link that leads out of the folder', async () => {
  const { folder, linewright } = world({ 'fleet/a.rig': soundLine, 'other/x.rig': loose });
  symlinkSync('../other/x.rig', join(folder, 'fleet/link.rig'));
  expect(await linewright('format', 'fleet')).toEqual({ code: 2, out: '0 formatted, 1 left as it was.\n', err: 'linewright format: fleet/link.rig is a link that leads out of the folder\n' });
  expect(readFileSync(join(folder, 'other/x.rig'), 'utf8')).toBe(loose);
});

test('what is no rig is not laid out', async () => {
  const wide = Buffer.from(loose, 'utf16le');
  const { folder, linewright } = world({ 'x.py': 'if a:\n    b()\n', 'wide.rig': wide });
  expect(await linewright('format', 'x.py', 'wide.rig')).toEqual({ code: 2, out: '0 formatted, 0 left as they were.\n', err: 'linewright format: x.py is no rig file: its name does not end with .rig\nlinewright format: wide.rig is not text in UTF-8\n' });
  expect([readFileSync(join(folder, 'x.py'), 'utf8'), readFileSync(join(folder, 'wide.rig'))]).toEqual(['if a:\n    b()\n', wide]);
});

test('what cannot be read is told, and the others are laid out', async () => {
  const { folder, linewright } = world({ 'a/x.rig': loose, 'b.rig': loose });
  symlinkSync('loop.rig', join(folder, 'loop.rig'));
  unreadable(folder, 'a/deep');
  const name = `${'n'.repeat(300)}.rig`;
  const { code, out, err } = await linewright('format', 'loop.rig', name, 'a', 'b.rig');
  expect([code, out]).toEqual([2, 'a/x.rig\nb.rig\n2 formatted, 0 left as they were.\n']);
  expect(err).toMatch(new RegExp(`^linewright format: loop.rig cannot be read\nlinewright format: ${name} cannot be read\nlinewright format: a/deep/[n/]+ cannot be read\n$`));
});

test('a file that is named twice counts once', async () => {
  const { linewright } = world({ 'a/x.rig': loose });
  expect((await linewright('format', '--check', 'a', 'a/x.rig', 'a/../a/x.rig')).out).toBe('a/x.rig is not in layout\n1 not in layout, 0 left as they were.\n');
});
