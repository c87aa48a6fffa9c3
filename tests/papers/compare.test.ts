import { expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { compareSides, findsMore, type BlockChange, type Comparison } from '../../src-core/papers/compare.ts';
import { compareMarkdown, compareText } from '../../src-core/papers/compare-text.ts';
import { comparedSide } from '../../src-core/papers/compared-side.ts';
import { formatFile } from '../../src-core/syntax/format.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { projectOf, type Texts } from '../support/judge-text.ts';
import { hostileRig, paperDay, plover } from './papers-of.ts';

const side = (texts: Texts, name: string) => comparedSide(projectOf(texts), { name, day: readDay(paperDay)!, keyOf: (p) => p, called: (p) => p });
const compared = (old: Texts, now: Texts): Comparison => compareSides(side(old, 'old'), side(now, 'new'), paperDay);
const block = ({ blocks }: Comparison, title: string): BlockChange | undefined => blocks.find((b) => b.block === title);
const value = (change: BlockChange | undefined, id: string) => change?.values.find((v) => v.id === id);

const line = (...entries: string[]): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d stitched
${entries.map((e) => `  ${e}\n`).join('')}}
`;

const texts = (change: (text: string) => string): Texts => Object.fromEntries(Object.entries(plover()).map(([path, text]) => [path, change(text)]));

test('the same is the same', () => {
  expect(compared(plover(), plover()).blocks).toEqual([]);
  expect(compareText(compared(plover(), plover()))).toContain('Nothing changed.');
});

test('a line that was found damaged: its strength, the entry that did it, and the finding', () => {
  const now = line('2026-05-02  fitted', '2026-06-21  damage  cut 2 strands at 8.4 m from inboard');
  const found = block(compared(line('2026-05-02  fitted'), now), 'line main');
  expect(found!.lines.map((l) => [l.side, l.line])).toEqual([['new', 10]]);
  const strength = value(found, 'main-strength')!;
  // 92 kN with 2 of 12 strands cut.
  expect(strength.new!.value).toBeCloseTo((92_000 * 10) / 12, 6);
  expect(strength.because.map((l) => l.line)).toContain(10);
  expect(found!.findings.map((f) => [f.change, f.code])).toContainEqual(['new', 'damage-left-in-service']);
});

test('a shared practice reaches every block that asks for it, and is named as what did it', () => {
  const found = compared(plover(), texts((t) => t.replace(/ {2}line-factor .*/, '  line-factor  2.5 "crew rule 4"')));
  const limit = value(block(found, 'chain long-reach'), 'tail-outboard-working-limit')!;
  expect(limit.because).toEqual([expect.objectContaining({ file: 'practice.rig', side: 'old' }), expect.objectContaining({ file: 'practice.rig', side: 'new' })]);
  expect(block(found, 'line main')!.findings.map((f) => f.code)).toContain('line-factor-too-low');
});

test('what changed in a block that another one looked at is named as what did it', () => {
  // A word feeds no number by itself: a choker takes half of the strap's limit in the chain.
  const choked = (t: string): string => t.replace(/hitch +basket/, 'hitch  choker');
  const chain = block(compared(plover(), texts(choked)), 'chain long-reach')!;
  expect(chain.lines).toEqual([]);
  const halved = chain.values.filter((v) => typeof v.old?.value === 'number' && typeof v.new?.value === 'number' && Math.abs(v.new.value / v.old.value - 0.5) < 1e-9);
  expect(halved.length).toBeGreaterThan(0);
  for (const { because } of halved) expect(because.map((l) => l.text.trim())).toContain('hitch  choker');
});

test('lines above, another layout or another unit change no value', () => {
  const moved = compared(plover(), texts((t) => `# one more line\n\n${t}`));
  expect(moved.blocks.flatMap((b) => [...b.values, ...b.findings])).toEqual([]);
  const laid = compared(plover(), texts((t) => formatFile(t.replaceAll('  ', ' '), topHeads)));
  expect(laid.blocks.flatMap((b) => [...b.values, ...b.findings])).toEqual([]);
  const unit = compared(line(), line().replace('30 m', '3000 cm'));
  expect(value(block(unit, 'line main'), 'length-as-fitted')).toBeUndefined();
});

test('a finding that is still made with other numbers has changed, one that is mended is gone', () => {
  const now = texts((t) => t.replaceAll('bury 46 cm', 'bury 50 cm'));
  const findings = block(compared(plover(), now), 'repair field-fix')!.findings;
  expect(findings.filter((f) => f.code === 'bury-too-short').map((f) => [f.change, f.before === undefined])).toEqual([['changed', false], ['changed', false]]);
  const mended = block(compared(plover(), texts((t) => t.replaceAll('bury 46 cm', 'bury 72 d'))), 'repair field-fix')!.findings;
  expect(mended.filter((f) => f.code === 'bury-too-short').map((f) => f.change)).toEqual(['gone', 'gone']);
});

test('a value that becomes unknown says why', () => {
  const gone = value(block(compared(line(), line().replace('  breaking  92 kN\n', '')), 'line main'), 'main-strength')!;
  expect(gone.new).toEqual({ display: 'not known', value: null, unit: null, assumed: false, cause: 'breaking strength of `main` is not given' });
});

test('blocks that come and go, and files', () => {
  const found = compared({ 'a.rig': line(), 'b.rig': 'anchor x {\n  kind tree\n}\n' }, { 'a.rig': `${line()}\nanchor y {\n  kind rock\n}\n` });
  expect(found.blocks.map((b) => [b.file, b.block, b.change])).toEqual([['a.rig', 'anchor y', 'new'], ['b.rig', 'anchor x', 'gone']]);
});

test('a line shows what it gained at its end, not the brace that was there, when a block comes behind it', () => {
  const now = line('2026-05-02  fitted', '2026-06-21  inspected');
  const behind = 'anchor x {\n  kind  tree\n}\n';
  const found = compared(`${line('2026-05-02  fitted')}\n${behind}`, `${now}\nanchor y {\n  kind  rock\n}\n\n${behind}`);
  expect(found.blocks.map((b) => [b.block, b.change, ...b.lines.map((l) => `${l.side} ${l.line} ${l.text}`)])).toEqual([
    ['line main', 'changed', 'new 10   2026-06-21  inspected'],
    ['anchor y', 'new', 'new 13 anchor y {', 'new 14   kind  rock', 'new 15 }'],
  ]);
});

test('a block that stands elsewhere in its file and says the same has not changed; one with another name shows its name', () => {
  const anchor = (name: string): string => `anchor ${name} {\n  kind  tree\n}\n`;
  expect(compared(`${line()}\n${anchor('x')}`, `${anchor('x')}\n${line()}`).blocks).toEqual([]);
  const renamed = compared(`${line()}\n${anchor('x')}`, `${line()}\n${anchor('y')}`);
  expect(renamed.blocks.map((b) => [b.block, b.change, ...b.lines.map((l) => l.text)])).toEqual([['anchor y', 'new', 'anchor y {'], ['anchor x', 'gone', 'anchor x {']]);
});

test('blocks that share a line share its change', () => {
  const found = compared('anchor x { kind tree }\n', 'anchor x { kind tree } anchor y { kind rock }\n');
  expect(found.blocks.map((b) => [b.block, ...b.lines.map((l) => `${l.side} ${l.text}`)])).toEqual([
    ['anchor x', 'old anchor x { kind tree }', 'new anchor x { kind tree } anchor y { kind rock }'],
    ['anchor y', 'new anchor x { kind tree } anchor y { kind rock }'],
  ]);
});

const cut = '2026-06-21  damage  cut 2 strands at 8.4 m from inboard';

test('an entry that is taken out or rewritten is told, one that is laid out anew is not', () => {
  const lost = (...entries: string[]) => block(compared(line('2026-05-02  fitted', cut), line(...entries)), 'line main')?.lostEntries.map((e) => [e.line, e.text, e.now]);
  const text = '2026-06-21 damage cut 2 strands at 8.4 m from inboard';
  expect(lost('2026-05-02  fitted')).toEqual([[10, text, undefined]]);
  expect(lost('2026-05-02  fitted', cut.replace('2 strands', '1 strand'))).toEqual([[10, text, text.replace('2 strands', '1 strand')]]);
  expect(lost('2026-05-02  fitted', cut.replace('06-21', '07-21'))).toEqual([[10, text, text.replace('06-21', '07-21')]]);
  expect(lost('2026-05-02  fitted', '2026-06-21  damage  pulled 1 strand at 9 m from inboard')).toEqual([[10, text, undefined]]);
  expect(lost(cut.replaceAll('  ', '   '), '2026-05-02 fitted', '2026-06-22 inspected')).toEqual([]);
  const said = compared(line(cut), line());
  expect(compareText(said)).toMatch(/the logbook no longer says `2026-06-21 damage[\s\S]*1 logbook entry is no longer there as written/);
  expect(findsMore(said, ['error', 'warning'])).toBe(true);
  expect(findsMore(said, ['error'])).toBe(false);
  expect(findsMore(compared(line(), line('2026-05-02  fitted')), ['error', 'warning'])).toBe(false);
});

test('a finding that a comment sets aside is not gone', () => {
  const bare = (more: string): string => line(`2026-05-02  cut at 25 m from inboard${more}`);
  const was = compared(line(), bare('')).blocks.flatMap((b) => b.findings).find((f) => f.code === 'bare-end')!;
  const allowed = bare('  # allow bare-end: the eye is made tonight');
  for (const old of [bare(''), line()]) {
    const found = block(compared(old, allowed), 'line main')!.findings.filter((f) => f.code === 'bare-end');
    expect(found).toEqual([expect.objectContaining({ change: 'aside', severity: 'warning', message: was.message, reason: 'the eye is made tonight' })]);
  }
  expect(compareText(compared(bare(''), allowed)).replace(/\s+/g, ' ')).toMatch(/set aside warning\[bare-end\].*because: the eye is made tonight.*1 set aside in writing/);
  expect(compareMarkdown(compared(bare(''), allowed))).toContain('(because: the eye is made tonight)');
  expect(compared(allowed, allowed).blocks).toEqual([]);
});

test('Markdown for a review keeps the user\'s text in its place', () => {
  const found = compared(hostileRig, hostileRig.replace('92 kN', '90 kN').replaceAll('<script>', '</script>```'));
  const markdown = compareMarkdown(found);
  const outside = markdown.replace(/^(`{3,})diff\n[\s\S]*?\n\1$/gm, '').replace(/\\[\s\S]/g, '').replace(/`[^`\n]*`/g, '');
  expect(outside).not.toMatch(/<\w|\]\(|[\u202a-\u202e]/);
  expect(outside).not.toMatch(/^```/m);
  expect(markdown).toContain('| outboard end of main, breaking strength there | 82.8 to 92 kN \\* | 81 to 90 kN \\* | test.rig:18 |');
});

test('text and JSON are the same every time', () => {
  const once = (): string => JSON.stringify(compared(plover(), texts((t) => t.replace('92 kN', '90 kN'))));
  expect(once()).toBe(once());
});
