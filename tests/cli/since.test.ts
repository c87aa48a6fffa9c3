import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { repository } from './repository.ts';
import { shortBury, soundLine, world } from './world.ts';

const fleet = {
  'common/p.rig': 'practice {\n  temporary-life  60 days\n}\n',
  'common/q.rig': 'use "p.rig"\n',
  'rigs/alone.rig': shortBury,
  'rigs/other.rig': shortBury,
  'rigs/uses-p.rig': `use "../common/p.rig"\n${shortBury}`,
  'rigs/uses-q.rig': `use "../common/q.rig"\n${shortBury}`,
};

function changed(change: (folder: string) => void, files: Readonly<Record<string, string>> = fleet) {
  const made = repository(files);
  change(made.folder);
  const judged = async (...words: string[]): Promise<string[]> => (JSON.parse((await made.linewright('check', '--format', 'json', '--since', 'HEAD', ...words)).out) as { files: string[] }).files;
  return { ...made, judged };
}

test('nothing changed, nothing is judged', async () => {
  const { linewright } = changed(() => undefined);
  expect(await linewright('check', '--since', 'HEAD')).toEqual({ code: 0, err: '', out: '0 files: nothing found. 0 checks made, 0 within the limit given by its source, 0 not; 0 not judged.\n' });
});

test('a changed rig is judged, and no other', async () => {
  const { judged, linewright } = changed((folder) => writeFileSync(join(folder, 'rigs/alone.rig'), `${shortBury}\n`));
  expect(await judged()).toEqual(['rigs/alone.rig']);
  const { code, out } = await linewright('check', '--since', 'HEAD');
  expect([code, out.match(/^\S+\.rig/gm)]).toEqual([1, ['rigs/alone.rig']]);
});

test('every rig that takes a changed file in is judged, over several steps too', async () => {
  const { judged } = changed((folder) => writeFileSync(join(folder, 'common/p.rig'), 'practice {\n  temporary-life  10 days\n}\n'));
  expect(await judged()).toEqual(['common/p.rig', 'common/q.rig', 'rigs/uses-p.rig', 'rigs/uses-q.rig']);
  expect(await judged('rigs')).toEqual(['common/p.rig', 'common/q.rig', 'rigs/uses-p.rig', 'rigs/uses-q.rig']);
  expect(await judged('--jobs', '2')).toEqual(['common/p.rig', 'common/q.rig', 'rigs/uses-p.rig', 'rigs/uses-q.rig']);
});

test('a file that was taken away is a change to those that use it', async () => {
  const { linewright } = changed((folder) => rmSync(join(folder, 'common/q.rig')));
  const { out } = await linewright('check', '--since', 'HEAD');
  expect(out).toContain('rigs/uses-q.rig:1:5 error[use-missing]');
  expect(out).not.toContain('rigs/alone.rig');
});

test('a file that was never there is no change', async () => {
  const { judged } = changed((folder) => writeFileSync(join(folder, 'rigs/alone.rig'), `${shortBury}\n`), { ...fleet, 'rigs/broken.rig': 'use "gone.rig"\n' });
  expect(await judged()).toEqual(['rigs/alone.rig']);
});

test('a new file is a change, whether git was told of it or told to ignore it', async () => {
  const { judged, git } = changed((folder) => {
    writeFileSync(join(folder, 'rigs/new.rig'), soundLine);
    writeFileSync(join(folder, 'rigs/ignored.rig'), soundLine);
    writeFileSync(join(folder, 'rigs/ö "new".rig'), soundLine);
  }, { ...fleet, '.gitignore': 'ignored.rig\n' });
  expect(await judged()).toEqual(['rigs/ignored.rig', 'rigs/new.rig', 'rigs/ö "new".rig']);
  git('add', 'rigs/new.rig');
  expect(await judged()).toEqual(['rigs/ignored.rig', 'rigs/new.rig', 'rigs/ö "new".rig']);
});

test('a link changes with what it leads to', async () => {
  const { judged, commit, folder } = changed((f) => symlinkSync('alone.rig', join(f, 'rigs/link.rig')));
  commit();
  expect(await judged()).toEqual([]);
  writeFileSync(join(folder, 'rigs/alone.rig'), `${shortBury}\n`);
  expect(await judged()).toEqual(['rigs/alone.rig', 'rigs/link.rig']);
});

test('from a folder below the top, and since an older revision', async () => {
  const { judged, commit, linewright, folder } = changed((f) => writeFileSync(join(f, 'rigs/alone.rig'), `${shortBury}\n`));
  commit();
  expect(await judged()).toEqual([]);
  expect((await linewright('check', '--since', 'HEAD~1')).out).toMatch(/^rigs\/alone\.rig:8/);
  expect((await linewright('check', 'rigs', '--root', 'rigs', '--since', 'HEAD~1')).out).toMatch(/^rigs\/alone\.rig:8/);
  expect(folder).not.toBe('');
});

test.each(['', '-x', '--output=x', 'nowhere', 'HEAD:rigs'])('%j is not a revision', async (revision) => {
  const { linewright } = changed(() => undefined);
  const { code, err } = await linewright('check', `--since=${revision}`);
  expect(code).toBe(2);
  expect(err).toBe(revision === '' ? 'linewright check: --since lacks its REV\n' : `linewright check: \`${revision}\` is not a revision; a revision is a commit, a branch or a tag, such as HEAD~1\n`);
});

test('without version control there is no since', async () => {
  const { folder, linewright } = world({ 'a.rig': soundLine });
  expect((await linewright('check', '--since', 'HEAD')).err).toBe(`linewright check: ${folder} is under no version control that \`git\` knows of\n`);
});
