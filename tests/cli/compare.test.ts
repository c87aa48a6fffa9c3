import { mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Comparison } from '../../src-core/papers/compare.ts';
import { repository } from './repository.ts';
import { runIn, shortBury, soundLine, world } from './world.ts';

const read = (out: string): Comparison => JSON.parse(out) as Comparison;
const damage = soundLine.replace('washed\n}', 'washed\n  2026-06-21  damage     cut 2 strands at 8.4 m from inboard\n}');

test('two files: what is new decides how it ends', async () => {
  const { linewright } = world({ 'old.rig': soundLine, 'new.rig': shortBury });
  const worse = await linewright('compare', 'old.rig', 'new.rig');
  expect(worse.code).toBe(1);
  expect(worse.out).toMatch(/^old\.rig and new\.rig, both judged as of 2026-06-22\n/);
  expect(worse.out).toContain('outboard end of main, bury, in diameters: 72 d -> 46 d [new.rig:8]');
  expect(worse.out).toContain('  new error[bury-too-short] bury of `main` outboard eye is 46 d');
  const better = await linewright('compare', 'new.rig', 'old.rig');
  expect(better.code).toBe(0);
  expect(better.out).toContain('  gone error[bury-too-short]');
  const same = await linewright('compare', 'old.rig', 'old.rig');
  expect([same.code, same.out]).toEqual([0, 'old.rig and old.rig, both judged as of 2026-06-22\n\nNothing changed.\n']);
});

test('two folders: files of one name belong together', async () => {
  const { linewright } = world({ 'a/x.rig': soundLine, 'a/y.rig': 'anchor t {\n  kind tree\n}\n', 'b/x.rig': damage });
  const { out, code } = await linewright('compare', 'a', 'b', '--format', 'json');
  expect(read(out).blocks.map((b) => [b.file, b.block, b.change])).toEqual([['a/y.rig', 'anchor t', 'gone'], ['b/x.rig', 'line main', 'changed']]);
  expect(code).toBe(1);
  expect((await linewright('compare', 'a', 'a/x.rig')).err).toBe('linewright compare: a and a/x.rig are a file and a folder; compare two of a kind\n');
});

test('a file against a revision, with what it used then', async () => {
  const { folder, commit, linewright } = repository({ 'rigs/a.rig': `use "../common/p.rig"\n${soundLine.replace('washed\n}', 'washed\n  2026-06-01  cut     at 25 m from inboard\n  2026-06-01  splice  outboard eye thimble tube bury 72 d taper 24 d stitched temporary\n}')}`, 'common/p.rig': 'practice {\n  temporary-life  60 days "crew rule 3"\n}\n' });
  const nothing = await linewright('compare', '--against', 'HEAD', 'rigs/a.rig');
  expect([nothing.code, nothing.out]).toEqual([0, 'HEAD:rigs/a.rig and rigs/a.rig, both judged as of 2026-06-22\n\nNothing changed.\n']);
  writeFileSync(join(folder, 'common/p.rig'), 'practice {\n  temporary-life  10 days\n}\n');
  const { out, code } = await linewright('compare', '--against', 'HEAD', 'rigs/a.rig', '--format', 'json');
  expect(code).toBe(1);
  expect(read(out).blocks.map((b) => [b.file, b.block, b.findings.map((f) => `${f.change} ${f.code}`)])).toEqual([
    ['common/p.rig', 'practice', []],
    ['rigs/a.rig', 'line main', ['new temporary-splice-overdue', 'gone temporary-splice']],
  ]);
  commit();
  expect((await linewright('compare', 'HEAD~1:rigs/a.rig', 'HEAD:rigs/a.rig', '--format', 'json')).out.replaceAll('HEAD:', '').replaceAll('HEAD~1:', 'HEAD:')).toBe(out);
  // From inside a folder git counts from the top, and `./` from here.
  const inside = await runIn(join(folder, 'rigs'), ['compare', 'HEAD~1:./a.rig', 'a.rig', '--format', 'json']);
  expect(read(inside.out).blocks.map((b) => [b.file, b.block])).toEqual([[join(folder, 'common/p.rig'), 'practice'], ['a.rig', 'line main']]);
});

test('a folder against a revision, with files that came, went and were renamed', async () => {
  const { folder, linewright } = repository({ 'fleet/a.rig': soundLine, 'fleet/b.rig': 'anchor t {\n  kind tree\n}\n', 'fleet/notes.txt': 'no rig' });
  renameSync(join(folder, 'fleet/b.rig'), join(folder, 'fleet/c.rig'));
  writeFileSync(join(folder, 'fleet/a.rig'), damage);
  const { out } = await linewright('compare', '--against', 'trunk', 'fleet', '--format', 'json');
  expect(read(out).blocks.map((b) => [b.file, b.change])).toEqual([['fleet/a.rig', 'changed'], ['fleet/b.rig', 'gone'], ['fleet/c.rig', 'new']]);
});

test('what cannot be compared is one line', async () => {
  const { folder, linewright, commit } = repository({ 'a.rig': soundLine, 'latin1.rig': new Uint8Array([0x6c, 0xe9, 0x0a]), 'x.txt': '' });
  symlinkSync('/etc/hostname', join(folder, 'link.rig'));
  mkdirSync(join(folder, 'empty'));
  commit();
  const says = async (...words: string[]): Promise<string> => {
    const { code, out, err } = await linewright('compare', ...words);
    expect([code, out]).toEqual([2, '']);
    return err.replace(/^linewright compare: /, '');
  };
  expect(await says('a.rig')).toBe('this takes two things to compare; linewright compare OLD NEW, or linewright compare --against REV PATH; a revision is written REV:PATH\n');
  expect(await says('a.rig', 'b.rig')).toBe('b.rig is not there\n');
  expect(await says('nowhere:a.rig', 'a.rig')).toBe('`nowhere` is not a revision; a revision is a commit, a branch or a tag, such as HEAD~1\n');
  expect(await says('--against', '--output=/tmp/x', 'a.rig')).toContain('is not a revision');
  expect(await says('HEAD:gone.rig', 'a.rig')).toBe('gone.rig is not there at HEAD\n');
  expect(await says('HEAD:latin1.rig', 'a.rig')).toBe('HEAD:latin1.rig is not text in UTF-8\n');
  expect(await says('HEAD:link.rig', 'a.rig')).toBe('HEAD:link.rig leads out of the workspace folder\n');
  expect(await says('HEAD:a.rig', 'HEAD:a.rig', '--root', '.')).toBe('--root says nothing about revisions; what they use is found in the repository\n');
  expect(await says('HEAD:../../etc', '.')).toContain('is not there at HEAD');
  const bare = world({ 'a.rig': soundLine });
  expect((await bare.linewright('compare', '--against', 'HEAD', 'a.rig')).err).toBe('linewright compare: a.rig is under no version control that `git` knows of\n');
});

test('a link is followed as it led then, within the repository', async () => {
  const { folder, commit, linewright } = repository({ 'old/p.rig': 'practice {\n  line-factor  2\n}\n', 'lib/p.rig': 'practice {\n  line-factor  3\n}\n', 'a.rig': `use "lib/p.rig"\n${soundLine}` });
  rmSync(join(folder, 'lib'), { recursive: true });
  symlinkSync('old', join(folder, 'lib'));
  symlinkSync('a.rig', join(folder, 'link.rig'));
  symlinkSync('round.rig', join(folder, 'round.rig'));
  commit();
  for (const words of [['HEAD:a.rig', 'a.rig'], ['HEAD:link.rig', 'link.rig'], ['--against', 'HEAD', 'link.rig'], ['HEAD:lib', 'lib'], ['--against', 'HEAD', 'lib/p.rig']]) {
    expect((await linewright('compare', ...words)).out, words.join(' ')).toContain('\nNothing changed.\n');
  }
  expect((await linewright('compare', 'HEAD~1:a.rig', 'HEAD:a.rig')).out).not.toContain('use-missing');
  expect((await linewright('compare', '--against', 'HEAD~1', 'lib/p.rig')).out).toContain('  -   line-factor  3\n  +   line-factor  2\n');
  expect((await linewright('compare', 'HEAD:round.rig', 'a.rig')).err).toBe('linewright compare: HEAD:round.rig cannot be read\n');
});

test('a document at a revision is the rig of its fences', async () => {
  const document = (rig: string): string => `# Build {\n\n\`\`\`rig\n${rig}\`\`\`\n\nText.\n`;
  const { folder, linewright } = repository({ 'doc.md': document(soundLine), 'bare.md': 'Text.\n' });
  expect((await linewright('compare', '--against', 'HEAD', 'doc.md')).out).toContain('\nNothing changed.\n');
  writeFileSync(join(folder, 'doc.md'), document(shortBury));
  expect((await linewright('compare', '--against', 'HEAD', 'doc.md')).out).toContain('72 d -> 46 d [doc.md:11]');
  expect((await linewright('compare', '--against', 'HEAD', 'bare.md')).out).toContain('\nNothing changed.\n');
});

test('what git says against it is told', async () => {
  const { folder, linewright } = repository({ 'a.rig': soundLine });
  writeFileSync(join(folder, '.git/index'), 'no index');
  expect(await linewright('check', '--since', 'HEAD')).toEqual({ code: 2, out: '', err: expect.stringMatching(/^linewright check: `git` could not do its part; it says: .*index file.*\n$/) as string });
  writeFileSync(join(folder, '.git/config'), '[core');
  expect((await linewright('compare', '--against', 'HEAD', 'a.rig')).err).toMatch(/^linewright compare: a\.rig is under no version control that `git` knows of; it says: bad config line .*\n$/);
});

test('Markdown has a table, the findings and the lines', async () => {
  const { linewright } = world({ 'old.rig': soundLine, 'new.rig': damage });
  const { out } = await linewright('compare', 'old.rig', 'new.rig', '--format', 'markdown');
  expect(out).toContain('| piece main, breaking strength | 82.8 to 92 kN \\* | 76.6 kN \\* | new.rig:13 |');
  expect(out).toContain('- **new error** `damage-left-in-service`: ');
  expect(out).toContain('```diff\n+   2026-06-21  damage     cut 2 strands at 8.4 m from inboard\n```');
});
