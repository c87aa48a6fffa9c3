import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { runIn, shortBury, soundLine, world } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));

test('nothing found ends with 0, and says how much was judged', async () => {
  const { linewright } = world({ 'a.rig': soundLine });
  const { code, out, err } = await linewright('check');
  expect(out).toMatch(/1 file: nothing found\. \d+ checks made, \d+ within the limit given by its source, 0 not; \d+ not judged\.\n$/);
  expect(err).toBe('');
  expect(code).toBe(0);
});

test('a finding ends with 1 and stands at its place', async () => {
  const { linewright } = world({ 'a.rig': shortBury });
  const { code, out } = await linewright('check', 'a.rig');
  expect(code).toBe(1);
  const lines = out.split('\n');
  const at = lines.findIndex((line) => line.startsWith('a.rig:8:35 error[bury-too-short] bury of `main` outboard eye is 46 d, below the 72 d'));
  expect(lines.slice(at + 1, at + 4).map((line) => line.split(':')[0])).toEqual(['    why', '    help', '    source']);
  expect(out).toMatch(/1 file: 1 error/);
});

test('the level decides how it ends, and hides nothing', async () => {
  const { linewright } = world({ 'a.rig': soundLine.replace('  diameter  10 mm\n', '') });
  const warning = await linewright('check');
  const information = await linewright('check', '--level', 'information');
  expect(warning.out).toContain('information[missing-fact]');
  expect(information.out).toBe(warning.out);
  expect([warning.code, information.code]).toEqual([0, 1]);
});

test('a finding is judged as of the day that is given', async () => {
  const { linewright } = world({ 'a.rig': soundLine });
  expect((await linewright('check', '--on', '2027-06-22')).out).toContain('inspection-overdue');
  expect((await linewright('check', '--on', '2026-06-22')).out).not.toContain('inspection-overdue');
  expect((await runIn(world({ 'a.rig': soundLine }).folder, ['check'], { today: '2027-06-22' })).out).toContain('inspection-overdue');
});

test.each(['2026-02-31', 'tomorrow', '2026-6-1'])('%s is not a day', async (day) => {
  const { code, err } = await world({ 'a.rig': soundLine }).linewright('check', '--on', day);
  expect(code).toBe(2);
  expect(err).toBe(`linewright check: --on \`${day}\` is not a day; write it in full, such as 2026-06-22\n`);
});

test('what cannot be checked is one line each, and the others are checked', async () => {
  const { folder, linewright } = world({ 'good.rig': soundLine, 'latin1.rig': new Uint8Array([0x6c, 0xe9, 0x0a]) });
  mkdirSync(join(folder, 'empty'));
  const { code, out, err } = await linewright('check', 'good.rig', 'latin1.rig', 'gone.rig', 'empty');
  expect(err.split('\n')).toEqual(['linewright check: latin1.rig is not text in UTF-8', 'linewright check: gone.rig is not there', 'linewright check: empty holds no rig files', '']);
  expect(out).toMatch(/^1 file: nothing found; 3 could not be checked\./);
  expect(code).toBe(2);
});

test('a file that may not be read', async () => {
  const { folder, linewright } = world({ 'shut.rig': soundLine });
  chmodSync(join(folder, 'shut.rig'), 0);
  const { code, err } = await linewright('check', 'shut.rig');
  // Whoever may read everything reads this too.
  if (process.getuid?.() === 0) expect(code).toBe(0);
  else expect([code, err]).toEqual([2, 'linewright check: shut.rig cannot be read\n']);
});

test('a device is not a rig', async () => {
  const { code, err } = await world().linewright('check', '/dev/null');
  expect([code, err]).toEqual([2, 'linewright check: /dev/null cannot be read\n']);
});

test('a folder is every rig under it, but not those of packages and dot folders', async () => {
  const { linewright } = world({ 'rigs/b.rig': soundLine, 'rigs/deep/a.rig': soundLine, 'rigs/node_modules/x/c.rig': shortBury, 'rigs/.git/d.rig': shortBury, 'rigs/e.txt': shortBury });
  const { code, out } = await linewright('check', 'rigs', '--format', 'json');
  expect(JSON.parse(out).files).toEqual(['rigs/b.rig', 'rigs/deep/a.rig']);
  expect(code).toBe(0);
});

test('used files are read, inside the workspace folder only', async () => {
  const { folder, linewright } = world({ 'in/a.rig': `use "../common/p.rig"\nuse "link.rig"\n${soundLine}`, 'common/p.rig': 'practice {\n  temporary-life  10 days\n}\n', 'in/alone.rig': soundLine });
  const other = world({ 'secret.rig': 'line hidden {\n}\n' });
  symlinkSync(join(other.folder, 'secret.rig'), join(folder, 'in', 'link.rig'));
  const { out } = await linewright('check', 'in/a.rig', '--format', 'json');
  const { files, findings } = JSON.parse(out) as { files: string[]; findings: { code: string; line: number }[] };
  expect(files).toEqual(['common/p.rig', 'in/a.rig']);
  expect(findings.filter((f) => f.code.startsWith('use-')).map((f) => [f.code, f.line])).toEqual([['use-outside', 2]]);
  const narrow = await linewright('check', 'in/a.rig', '--root', 'in');
  expect(narrow.out).toMatch(/a\.rig:1:5 error\[use-outside\]/);
  expect((await linewright('check', 'common/p.rig', '--root', 'in')).err).toBe('linewright check: common/p.rig lies outside of in\n');
});

test('a rig elsewhere has the folder under version control above it as its workspace', async () => {
  const elsewhere = world({ 'fleet/.git/HEAD': '', 'fleet/rigs/a.rig': `use "../p.rig"\n${soundLine}`, 'fleet/p.rig': '', 'loose/b.rig': 'use "../p.rig"\n', 'p.rig': '' });
  const { linewright } = world();
  const { out, code } = await linewright('check', join(elsewhere.folder, 'fleet/rigs/a.rig'));
  expect(out).not.toContain('use-');
  expect(code).toBe(0);
  expect((await linewright('check', join(elsewhere.folder, 'loose/b.rig'))).out).toContain(`${elsewhere.folder}/loose/b.rig:1:5 error[use-outside]`);
});

test('characters that a terminal obeys are spelt out', async () => {
  const { linewright } = world({ 'a.rig': 'line main {\n  material  \u001b[2JHMPE\u0007\u202e\n}\n' });
  for (const words of [['check'], ['tokens', 'a.rig'], ['check', '--format', 'json'], ['check', 'no\u001bthing.rig'], ['\u001bcheck']]) {
    const { out, err } = await linewright(...words);
    expect(out + err).toMatch(/\\x1b|\\u001b|stray/);
    expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  }
});

test('whatever is in a name, it is the name of one file on one line', async () => {
  const { linewright, folder } = world({ 'new\nline\u001b\u202e.rig': 'lin x {}\n', 'bad\n.rig': new Uint8Array([0xe9]) });
  const text = await linewright('check');
  expect(text.out).toMatch(/^new\\x0aline\\x1b\\x202e\.rig:1:1 error\[unknown-block\] /);
  expect(text.err).toBe('linewright check: bad\\x0a.rig is not text in UTF-8\n');
  expect((await linewright('sheet', 'bad\n.rig')).err).toBe('linewright sheet: bad\\x0a.rig is not text in UTF-8\n');
  const sarif = await linewright('check', '--format', 'sarif');
  expect(sarif.out).toContain('"uri": "new%0Aline%1B%E2%80%AE.rig"');
  expect(sarif.out).toContain('"uri": "bad%0A.rig"');
  const github = (await linewright('check', '--format', 'github')).out;
  expect(github).toMatch(/^::error file=new%0Aline\u001b\u202e\.rig,line=1,/);
  expect(github).toContain('\n::error title=linewright::bad%0A.rig is not text in UTF-8\n');
  // On a terminal nothing is obeyed, whatever is asked for.
  expect((await runIn(folder, ['check', '--format', 'github'], { width: 80 })).out).toMatch(/^::error file=new%0Aline\\x1b\\x202e\.rig,line=1,/);
});

test('bold is for terminals', async () => {
  const { folder } = world({ 'a.rig': shortBury });
  expect((await runIn(folder, ['check'], { styled: true })).out).toContain('\u001b[1ma.rig:8:35 error[bury-too-short]\u001b[22m bury of');
  expect((await runIn(folder, ['check'])).out).not.toContain('\u001b');
});

const location = { file: z.string(), line: z.int().min(1), column: z.int().min(1), endLine: z.int().min(1), endColumn: z.int().min(1) };
const severity = z.enum(['error', 'warning', 'information', 'hint']);
const shape = z.strictObject({
  version: z.literal(1),
  day: z.iso.date(),
  files: z.array(z.string()),
  findings: z.array(
    z.strictObject({
      ...location,
      code: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
      severity,
      message: z.string().min(1),
      why: z.string().optional(),
      help: z.string().optional(),
      source: z.string().optional(),
      related: z.array(z.strictObject({ ...location, message: z.string() })),
      fixes: z.array(z.strictObject({ title: z.string(), mechanical: z.boolean(), edits: z.array(z.strictObject({ ...location, text: z.string() })) })),
    }),
  ),
  problems: z.array(z.strictObject({ path: z.string(), says: z.string() })),
  severities: z.strictObject({ error: z.int(), warning: z.int(), information: z.int(), hint: z.int() }),
  checks: z.strictObject({ made: z.int(), failed: z.int(), notJudged: z.int() }),
});

test('JSON has the documented shape and the same findings as the text, and both are the same every time', async () => {
  const json = await runIn(examples, ['check', '--format', 'json']);
  const text = await runIn(examples, ['check']);
  const read = shape.parse(JSON.parse(json.out));
  expect(read.findings.length).toBeGreaterThan(3);
  const firstLines = text.out.split('\n').filter((line) => /^\S+\.rig:/.test(line));
  expect(firstLines).toEqual(read.findings.map((f) => `${f.file}:${f.line}:${f.column} ${f.severity}[${f.code}] ${f.message}`));
  expect((await runIn(examples, ['check', '--format', 'json'])).out).toBe(json.out);
  expect((await runIn(examples, ['check'])).out).toBe(text.out);
});

test('a fix of the JSON mends what it is offered for', async () => {
  // Only a plan is rewritten by a fix: what was made stands as it was made.
  const planned = `${shortBury}\nrepair again on main {\n  cut  at 20 m from inboard\n  splice  outboard eye thimble tube bury 46 d taper 24 d\n}\n`;
  const { folder, linewright } = world({ 'a.rig': planned });
  const { findings } = shape.parse(JSON.parse((await linewright('check', '--format', 'json')).out));
  const short = findings.filter((f) => f.code === 'bury-too-short');
  const fix = short.flatMap((f) => f.fixes)[0]!;
  const lines = planned.split('\n');
  for (const edit of fix.edits) lines[edit.line - 1] = lines[edit.line - 1]!.slice(0, edit.column - 1) + edit.text + lines[edit.line - 1]!.slice(edit.endColumn - 1);
  writeFileSync(join(folder, 'a.rig'), lines.join('\n'));
  const after = shape.parse(JSON.parse((await linewright('check', '--format', 'json')).out)).findings;
  expect(after.filter((f) => f.code === 'bury-too-short')).toHaveLength(short.length - 1);
});
