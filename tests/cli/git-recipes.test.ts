import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { repository } from './repository.ts';
import { soundLine } from './world.ts';

// The recipes of docs/git.md, carried out with the git of this machine and the command line as it is shipped.

const bundle = fileURLToPath(new URL('../../dist/linewright.cjs', import.meta.url));
const recipes = readFileSync(new URL('../../docs/git.md', import.meta.url), 'utf8');

beforeAll(() => buildBundles(['cli']));

/** Lines of the recipes that begin with some words, as they stand in the document. */
const recipe = (start: string): string[] => recipes.split('\n').map((line) => line.trim()).filter((line) => line.startsWith(start));

function prepared(files: Readonly<Record<string, string>>) {
  const made = repository({ ...files, '.gitattributes': `${recipe('*.rig')[0]!}\n` });
  const configured = recipe('git config');
  expect(configured.length).toBeGreaterThanOrEqual(2);
  const script = join(made.folder, '.git', 'linewright');
  writeFileSync(script, `#!/bin/sh\nexec "${process.execPath}" "${bundle}" "$@"\n`);
  chmodSync(script, 0o755);
  for (const line of configured) {
    const [, key, value] = /^git config (\S+) (?:'([^']*)'|(\S+))$/.exec(line)!.filter((part) => part !== undefined);
    made.git('config', key!, value!.replace(/^linewright textconv$/, `${script} textconv --on 2026-06-22`));
  }
  return made;
}

const winch = 'winch w {\n  rated    42 kN at layer 1\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  keep     10 wraps\n  carries  main\n}\n\n';

test('a difference shows changed loads, and which block they are of', () => {
  const { folder, git } = prepared({ 'rigs/a.rig': `use "p.rig"\n\n${winch}${soundLine}`, 'rigs/p.rig': 'practice {\n  line-factor  2\n}\n' });
  writeFileSync(join(folder, 'rigs/a.rig'), `use "p.rig"\n\n${winch}${soundLine.replace('breaking  92 kN', 'breaking  80 kN')}`);
  const diff = git('diff', '--unified=1');
  expect(diff).toContain('\n-  breaking  92 kN\n+  breaking  80 kN\n');
  expect(diff).toContain('\n-  = outboard end of main, breaking strength there: 82.8 to 92 kN *\n+  = outboard end of main, breaking strength there: 72 to 80 kN *\n');
  // The shared practice was found for the old version too: its factor of 2 and not the built-in one.
  expect(diff).toContain('\n+  ! warning[line-factor-too-low] `w` can pull 42 kN, above the 36 to 40 kN that a factor of 2 leaves of `main`\n');
  expect(diff).not.toContain('use-missing');
  for (const hunk of diff.split('\n').filter((line) => line.startsWith('@@'))) expect(hunk).toMatch(/@@ line main \{$/);
});

test('a dated entry is found under its line, and comments head no hunk', () => {
  const { folder, git } = prepared({ 'a.rig': soundLine });
  writeFileSync(join(folder, 'a.rig'), soundLine.replace('"nothing found"', '"grit"').replace('washed\n', 'washed "in clean water"\n'));
  expect(git('diff', '-U0').split('\n').filter((line) => line.startsWith('@@')).map((line) => line.replace(/^@@.*@@ /, ''))).toEqual(['line main {']);
});

test('what is no text is shown all the same', () => {
  const { folder, git } = prepared({ 'a.rig': soundLine });
  writeFileSync(join(folder, 'a.rig'), new Uint8Array([0x6c, 0xe9, 0x0a]));
  expect(git('diff')).toContain('+l');
});

test('a log of one block follows it through its file', () => {
  const { folder, git, commit } = prepared({ 'a.rig': `${winch}${soundLine}` });
  writeFileSync(join(folder, 'a.rig'), `${winch}${soundLine.replace('30 m', '28 m')}`);
  commit();
  const log = git('log', '--format=%s', '-L', ':line main:a.rig');
  expect(log).toContain('+  length    28 m');
});
