import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { LogbookJson } from '../../src-core/papers/logbook.ts';
import { runIn, shortBury, soundLine, world } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const say = (...words: string[]) => runIn(examples, words);

const papers: readonly string[][] = [
  ['card', 'field-fix', 'plover.rig'],
  ['brief', 'off-the-ford', 'plover.rig'],
  ['inspect', 'main', 'plover.rig'],
  ['logbook', 'main', 'plover.rig'],
  ['sheet', 'plover.rig'],
];

test.each(papers)('%s is written as text, Markdown and HTML', async (...words) => {
  const text = await say(...words);
  const markdown = await say(...words, '--format', 'markdown');
  const html = await say(...words, '--format', 'html');
  expect([text.code, markdown.code, html.code, text.err, markdown.err, html.err]).toEqual([0, 0, 0, '', '', '']);
  expect(markdown.out).toMatch(/^# .+\n\n.*2026-06-22/);
  expect(html.out).toMatch(/^<!doctype html>\n<html lang="en" dir="ltr">\n/);
  expect(html.out).toMatch(/<\/html>\n$/);
  expect(text.out).toContain('2026-06-22');
  expect((await say(...words, '--format', 'html')).out).toBe(html.out);
});

test.each([
  [['card', 'field-fix'], 'linewright card: this takes a name and a file: linewright card REPAIR FILE\n'],
  [['card', 'feild-fix', 'plover.rig'], 'linewright card: plover.rig has no repair `feild-fix`; did you mean field-fix?\n'],
  [['brief', 'x', 'dipper.rig', 'y'], 'linewright brief: this takes a name and a file: linewright brief PULL FILE\n'],
  [['inspect', 'zzz', 'practice.rig'], 'linewright inspect: practice.rig has no line `zzz`\n'],
  [['logbook', 'main', 'gone.rig'], 'linewright logbook: gone.rig is not there\n'],
  [['card', 'field-fix', 'plover.rig', '--format', 'pdf'], 'linewright card: --format takes one of text, markdown, html, not `pdf`\n'],
])('%j is refused', async (words, err) => {
  expect(await say(...words)).toEqual({ code: 2, out: '', err });
});

test('a piece that was cut from a line stands in the papers of that line', async () => {
  const { linewright } = world({ 'a.rig': soundLine.replace(/}\n$/, '  2026-06-01  cut  at 20 m from inboard keep tail\n}\n') });
  expect(await linewright('inspect', 'tail', 'a.rig')).toEqual({ code: 2, out: '', err: 'linewright inspect: `tail` is a piece of the line `main`; its part stands in: linewright inspect main a.rig\n' });
});

test('a repair on a line that nobody declared has no card', async () => {
  const { linewright } = world({ 'a.rig': 'repair fix on nothing {\n  cut at 3 m from inboard\n}\n' });
  expect((await linewright('card', 'fix', 'a.rig')).err).toBe('linewright card: the line that `fix` is on is not known; declare it as a `line`\n');
});

test('a logbook gives back the strength of what was mended', async () => {
  const rig = soundLine.replace('washed\n}', 'washed\n  2026-06-01  damage     pulled 2 strands at 8.4 m from inboard\n  2026-06-02  mended     pulled at 8.4 m from inboard\n}');
  const { linewright } = world({ 'a.rig': rig });
  const { entries } = JSON.parse((await linewright('logbook', 'main', 'a.rig', '--format', 'json')).out) as LogbookJson;
  const [sound, damaged, mended] = entries.slice(-3).map(({ pieces }) => pieces[0]!.strength);
  expect(damaged).not.toEqual(sound);
  expect(mended).toEqual(sound);
});

test('a logbook tells length and strength after each entry', async () => {
  const rig = soundLine.replace('washed\n}', `washed
  2026-06-01  damage     cut 2 strands at 8.4 m from inboard "found by hand"
  2026-06-10  cut        at 20 m from inboard keep tail
  2026-06-11  splice     outboard eye thimble tube bury 72 d taper 24 d size 200 mm stitched
  2026-07-30  retired    tail
}`);
  const { linewright } = world({ 'a.rig': rig });
  const { out, code } = await linewright('logbook', 'main', 'a.rig', '--format', 'json');
  const { entries, later } = JSON.parse(out) as LogbookJson;
  expect([code, later]).toEqual([0, 1]);
  expect(entries.map((e) => [e.day, e.says])).toEqual([
    ['2026-05-02', 'fitted'], ['2026-05-02', 'inspected'], ['2026-05-02', 'washed'], ['2026-06-01', 'damage cut 2 strands at 8.4 m from inboard'], ['2026-06-10', 'cut at 20 m from inboard keep tail'],
    ['2026-06-11', 'splice outboard eye thimble tube bury 72 d taper 24 d size 200 mm stitched'],
  ]);
  expect(entries[3]!.note).toBe('found by hand');
  const strength = (i: number, piece = 0) => entries[i]!.pieces[piece]!.strength;
  expect(strength(2).display).toBe('82.8 to 92 kN');
  // 92 kN with 2 of 12 strands cut.
  expect((strength(3).value as { low: number }).low ?? strength(3).value).toBeCloseTo((92_000 * 10) / 12, 6);
  expect(entries[4]!.pieces.map((p) => [p.name, p.length.value])).toEqual([['main', 20], ['tail', 10]]);
  expect(strength(4).cause).toContain('bare end');
  // 720 mm of tail and half of the eye leave the line, and the standing part over the tail shortens by 15 to 25 % of what lies over it.
  const { low, high } = entries[5]!.pieces[0]!.length.value as { low: number; high: number };
  expect(high).toBeCloseTo(20 - 0.72 - 0.1 - (0.72 / 0.85) * 0.15, 9);
  expect(low).toBeCloseTo(20 - 0.72 - 0.1 - (0.72 / 0.75) * 0.25, 9);
});

test('SARIF and annotations say the same as the text, and end the same way', async () => {
  const { linewright } = world({ 'a.rig': shortBury, 'b/latin1.rig': new Uint8Array([0xe9]) });
  const text = await linewright('check', 'a.rig');
  const sarif = await linewright('check', 'a.rig', '--format', 'sarif');
  const github = await linewright('check', 'a.rig', '--format', 'github');
  expect([text.code, sarif.code, github.code]).toEqual([1, 1, 1]);
  const { runs } = JSON.parse(sarif.out) as { runs: { results: { ruleId: string; locations: { physicalLocation: { artifactLocation: object; region: { startLine: number } } }[] }[]; invocations: object[] }[] };
  const codes = text.out.split('\n').flatMap((line) => /^a\.rig:(\d+):\d+ \w+\[([a-z-]+)\]/.exec(line)?.slice(1) ?? []);
  expect(runs[0]!.results.flatMap((r) => [String(r.locations[0]!.physicalLocation.region.startLine), r.ruleId])).toEqual(codes);
  expect(runs[0]!.results[0]!.locations[0]!.physicalLocation.artifactLocation).toEqual({ uri: 'a.rig', uriBaseId: '%SRCROOT%' });
  expect(github.out).toContain('::error file=a.rig,line=8,endLine=8,col=35,endColumn=40,title=bury-too-short::bury of `main` outboard eye is 46 d');
  expect(github.out.trimEnd().split('\n').at(-1)).toBe(text.out.trimEnd().split('\n').at(-1));
  const broken = await linewright('check', 'b', '--format', 'sarif');
  expect(broken.code).toBe(2);
  expect((JSON.parse(broken.out) as { runs: { invocations: object[] }[] }).runs[0]!.invocations[0]).toMatchObject({ executionSuccessful: false });
});
