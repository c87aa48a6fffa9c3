import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { sourceOfLimit } from '../../src-core/rules/side-by-side.ts';
import { unknown } from '../../src-core/mechanics/derivation.ts';
import { printSource } from '../../src-core/trade/source.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { exactly } from '../../src-core/units/amount.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

interface LineText {
  readonly diameter?: string;
  readonly length?: string;
  readonly ends?: string;
  readonly log?: string;
  readonly more?: string;
}

const eye = 'eye thimble tube bury 72 d taper 24 d';
const line = ({ diameter = '10 mm', length = '30 m', ends = `outboard ${eye}`, log = '2026-05-01 fitted', more = '' }: LineText): string => `line main {
  material  HMPE
  strands   12
  diameter  ${diameter}
  length    ${length}
  breaking  92 kN
  ${[...ends.split('; '), ...log.split('; ')].filter(Boolean).join('\n  ')}
}
${more}`;

const about = (parts: LineText, ...codes: string[]) => findingsIn(line(parts)).filter((f) => codes.includes(f.code));
const said = (parts: LineText, ...codes: string[]): string[] => about(parts, ...codes).map((f) => `${f.line}:${f.column} ${f.severity}[${f.code}]: ${f.message}`);
const notJudged = (parts: LineText) => projectOf(line(parts)).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.flatMap((b) => b.notJudged);

const maker = printSource(sources['maker-12-strand-eye']);
const practiceBlock = 'the figure written in the `practice` block';

describe('two eyes in one piece', () => {
  const both = `inboard ${eye}; outboard ${eye}`;
  // Each takes 720 mm of tail, and half of the 40 d that an eye of no written size may have: 2 · 920 mm.
  test.each([
    ['1.84 m', []],
    ['2.4 m', []],
    ['1.83 m', ['8:3 error[overlapping-splices]: buried tails of `main` inboard eye and `main` outboard eye overlap by 10 mm']],
    ['1.6 m', ['8:3 error[overlapping-splices]: buried tails of `main` inboard eye and `main` outboard eye overlap by 240 mm']],
  ])('in %s', (length, expected) => expect(said({ length, ends: both }, 'overlapping-splices')).toEqual(expected));
});

describe('tapers', () => {
  const rules = ['taper-missing', 'taper-too-short'];
  test.each([
    ['one that is written is never said to be missing', 'taper 15 d', ['7:32 warning[taper-too-short]: taper of `main` outboard eye is 15 d, below the 21 d for HMPE']],
    ['one that is just long enough', 'taper 21 d', []],
    ['one that is not written', '', ['7:3 warning[taper-missing]: taper of `main` outboard eye is not given, so it counts as blunt; 21 d is needed in HMPE']],
  ])('%s', (_what, taper, expected) => expect(said({ ends: `outboard eye bury 72 d ${taper}`.trimEnd() }, ...rules)).toEqual(expected));

  test('what is needed is rounded up, and comes from whoever gave it', () => {
    const own = 'practice {\n  taper HMPE 20.52 d\n}\n';
    expect(about({ ends: 'outboard eye bury 72 d' }, ...rules).map((f) => f.finding.source)).toEqual([maker]);
    expect(about({ ends: 'outboard eye bury 72 d', more: own }, ...rules).map((f) => [f.message, f.finding.source])).toEqual([['taper of `main` outboard eye is not given, so it counts as blunt; 20.6 d is needed in HMPE', practiceBlock]]);
    // 20.52 times 11 mm is 225.7 mm.
    expect(about({ diameter: '11 mm', ends: 'outboard eye bury 80 cm taper 20 cm', more: own }, ...rules).map((f) => f.message)).toEqual(['taper of `main` outboard eye is 20 cm, below the 22.6 cm for HMPE']);
    expect(about({ diameter: '11 mm', ends: 'outboard eye bury 80 d taper 20.4 d', more: own }, ...rules).map((f) => f.message)).toEqual(['taper of `main` outboard eye is 20.4 d, below the 20.6 d for HMPE']);
  });

  test('a planned splice is tapered before it is made, an old one is measured', () => {
    const plan = '\nrepair new-eye on main {\n  cut at 20 m from inboard\n  splice outboard eye bury 72 d stitched\n}\n\npractice {\n  taper HMPE 20.52 d\n}\n';
    const found = about({ more: plan }, 'taper-missing');
    // 20.52 times 10 mm is 205.2 mm.
    expect(found.map((f) => f.finding.help)).toEqual(['taper the last 206 mm of the tail, and add `taper 20.6 d`']);
    expect(found[0]!.finding.fixes.map((fix) => [fix.title, fix.edits.map((e) => e.text)])).toEqual([['Add `taper 20.6 d`', [' taper 20.6 d']]]);
    expect(about({ ends: 'outboard eye bury 72 d' }, 'taper-missing').map((f) => [f.finding.help, f.finding.fixes])).toEqual([['measure the taper and add `taper`, or make the splice again', []]]);
  });
});

describe('where a limit comes from', () => {
  const value = { amount: exactly(1), kind: 'length' } as const;
  const place = { chunk: {}, start: 0, end: 1 };
  test('by its origin', () => {
    expect(sourceOfLimit({ ...value, origin: { from: 'written', place } })).toBe(practiceBlock);
    expect(sourceOfLimit({ ...value, origin: { from: 'assumed', source: sources['sae-j706'], means: '' } })).toBe(printSource(sources['sae-j706']));
    expect(sourceOfLimit({ ...value, origin: { from: 'constant', source: sources.geometry } })).toBe(printSource(sources.geometry));
    expect(sourceOfLimit({ ...value, origin: { from: 'derived', derivation: { calculation: 'c', means: 'm', symbol: 's', amount: exactly(1), kind: 'length', formula: '', inputs: [], sources: [], assumptions: [], notes: [] } } })).toBeUndefined();
    expect(sourceOfLimit(unknown({ key: 'k', says: 's', help: 'h' }))).toBeUndefined();
  });
});

describe('temporary splices', () => {
  const rule = 'temporary-splice-overdue';
  test('a planned one is not overdue', () => {
    expect(notJudged({ more: '\nrepair new-eye on main {\n  cut at 20 m from inboard\n  splice outboard eye bury 72 d taper 24 d stitched temporary\n}\n' }).filter((n) => n.rule === rule)).toEqual([]);
    expect(notJudged({}).filter((n) => n.rule === rule)).toEqual([]);
  });
});

describe('spooling', () => {
  const more = '\nwinch bow-winch {\n  carries main\n}\n';
  const spooled = (...entries: string[]): LineText => ({ log: ['2026-05-01 fitted', ...entries.map((entry, i) => `2026-06-0${i + 1} spooled ${entry}`)].join('; '), more });
  // 500 lbf are 2,224 N.
  const slack = '`main` was last wound onto the drum slack; it goes on under at least 2.23 kN';
  test.each([
    [['tight'], []],
    [['tight under 500 lbf'], []],
    [['tight under 499 lbf'], ['9:34 warning[spooled-slack]: `main` was wound onto the drum under 499 lbf, below the 500 lbf of practice']],
    [['tight under 2.2 kN'], ['9:34 warning[spooled-slack]: `main` was wound onto the drum under 2.2 kN, below the 2.23 kN of practice']],
    [['slack'], [`9:3 warning[spooled-slack]: ${slack}`]],
    [['slack under 100 lbf'], [`9:3 warning[spooled-slack]: ${slack}`]],
    [['slack', 'tight'], []],
    [['tight', 'slack'], [`10:3 warning[spooled-slack]: ${slack}`]],
  ])('%j', (entries, expected) => expect(said(spooled(...entries), 'spooled-slack')).toEqual(expected));

  // Common practice: a line that was off its drum is wound on again, and nobody wrote how.
  test.each(['reversed', 'splice inboard lug'])('%s since', (entry) => {
    const since = (day: string): LineText => ({ log: `2026-05-01 fitted; 2026-06-02 spooled tight under 600 lbf; ${day} ${entry}`, more });
    const asked = (text: LineText): boolean => said(text, 'missing-fact').some((f) => f.includes('how `main` was wound onto the drum again'));
    expect([asked(since('2026-06-01')), asked(since('2026-06-02')), asked(since('2026-06-03'))]).toEqual([false, true, true]);
    // A piece with a name of its own is told by it.
    const renewed = (of: string): LineText => ({ log: `2026-05-01 fitted; 2026-06-01 cut at 0.5 m from inboard keep rest; 2026-06-01 splice rest inboard lug; 2026-06-01 retired main; 2026-06-02 spooled tight under 600 lbf${of}`, more: more.replace('main', 'rest') });
    expect(said(renewed(' of rest'), 'missing-fact').some((f) => f.includes('was wound onto the drum'))).toBe(false);
    // Of one day what stands first was first.
    expect(asked({ log: `2026-05-01 fitted; 2026-06-02 ${entry}; 2026-06-02 spooled tight under 600 lbf`, more })).toBe(false);
  });

  test('the source is the shop\'s own where it wrote a figure', () => {
    const own = (load: string): LineText => ({ ...spooled(`tight under ${load}`), more: `${more}\npractice {\n  spooling-tension 260 kgf\n}\n` });
    expect(about(own('250 kgf'), 'spooled-slack').map((f) => [f.message, f.finding.source])).toEqual([['`main` was wound onto the drum under 250 kgf, below the 260 kgf of practice', practiceBlock]]);
    expect(said(own('260 kgf'), 'spooled-slack')).toEqual([]);
    expect(about(spooled('slack'), 'spooled-slack')[0]!.finding.source).toBe(printSource(sources['tm-9-2320-280-10-spooling']));
  });
});

describe('upkeep', () => {
  test('a logbook that cannot be read is said for itself, and its missing date not again', () => {
    const asked = (log: string): unknown[] => notJudged({ log }).filter((n) => n.rule === 'inspection-overdue').map((n) => [n.cause.key, n.cause.reported]);
    expect(asked('')).toEqual([['fitted of main', undefined]]);
    expect(asked('2026-05-01 fited')).toEqual([['fitted of main', true]]);
    expect(said({ log: '' }, 'missing-fact')).toEqual(['1:6 information[missing-fact]: when `main` was fitted is not given; 2 checks not judged']);
    expect(said({ log: '2026-05-01 fited' }, 'missing-fact')).toEqual([]);
  });
});
