import { surfaceNamed } from '../../src-core/trade/surface-resistance.ts';
import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { pullExample, pullWith, type PullParts } from '../../src-core/rules/example-pull.ts';
import { findingsIn, projectOf, testDay, type FindingLine } from '../support/judge-text.ts';

/** The usual winch with another rating. */
const winch = (rated: string): string => `winch bow-winch on plover {
  rated    ${rated}
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
`;

const gear = (trunk: string): string => `shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  ${trunk}
}
`;

const line = (breaking: string): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  ${breaking}
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}
`;

const anchor = (statements: string): string => `anchor larch {
  ${statements.split('; ').join('\n  ')}
}
`;

const log = 'kind buried-log; soil loam; log 1.2 m face 40 cm; depth 1 m; slope 3';
const dipper = 'vehicle dipper {\n  mass 1,800 kg\n}\n\n';
const tonnes30 = pullWith({ resistance: 'resistance  30 kN "load cell"' });

const about = (parts: PullParts, codes: readonly string[]): FindingLine[] => findingsIn(pullExample(parts)).filter((f) => codes.includes(f.code));
const said = (parts: PullParts, ...codes: string[]): string[] => about(parts, codes).map((f) => `${f.severity}[${f.code}]: ${f.message}`);

/** The word under a finding, as far as the end of its place. */
function marked(text: string, code: string): string {
  const project = projectOf(text);
  const file = project.file('test.rig')!;
  const { start, end } = file.spanOf(project.findings('test.rig', readDay(testDay)!).find((f) => f.code === code)!.place)!;
  return file.text.slice(start, end);
}

const notJudged = (parts: PullParts, rule: string): string[] =>
  projectOf(pullExample(parts)).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.flatMap((b) => b.notJudged).filter((n) => n.rule === rule).map((n) => n.cause.key);

describe('the winch, against what the pull needs', () => {
  const rules = ['winch-too-weak-for-pull', 'pull-on-high-layer'];
  // 26 kN of weight on gravel and 12 degrees: 0.2 to 0.333 and sin 12° = 0.208 of it, 10.6 to 14.1 kN. Layer 2 has 74/94 of the rating.
  const cases: readonly (readonly [what: string, parts: PullParts, said: readonly string[]])[] = [
    ['what may pass what the winch has is a warning, and is not said of the layer too', { winch: winch('12.5 kN') }, ['warning[winch-too-weak-for-pull]: `off-the-ford` needs a line pull of 10.6 to 14.1 kN, above the 12.5 kN of `bow-winch`']],
    ['what passes it with both ends is an error', { winch: winch('10.5 kN') }, ['error[winch-too-weak-for-pull]: `off-the-ford` needs a line pull of 10.6 to 14.1 kN, above the 10.5 kN of `bow-winch`']],
    ['enough on the first layer, not on the second', { winch: winch('15 kN') }, ['warning[pull-on-high-layer]: `off-the-ford` needs a line pull of 10.6 to 14.1 kN, above the 11.8 kN that `bow-winch` has on layer 2']],
    ['enough on the second', { winch: winch('18.5 kN') }, []],
    ['a pull of just what the winch has on its first layer', { winch: winch('38 kN'), pull: pullWith({ resistance: 'resistance  38 kN "load cell"', reach: 'reach     29 m' }) }, []],
    ['a rating written as a mass of the US system is answered in pounds-force', { winch: winch('9,500 lb'), pull: pullWith({ resistance: 'resistance  10,000 lbf "load cell"' }) }, ['error[winch-too-weak-for-pull]: `off-the-ford` needs a line pull of 10,000 lbf, above the 9,500 lbf of `bow-winch`']],
    ['a rating written in tonnes is answered in kilonewtons', { winch: winch('4 t'), pull: pullWith({ resistance: 'resistance  10,000 lbf "load cell"' }) }, ['error[winch-too-weak-for-pull]: `off-the-ford` needs a line pull of 44.5 kN, above the 39.2 kN of `bow-winch`']],
  ];
  test.each(cases)('%s', (_what, parts, expected) => expect(said(parts, ...rules)).toEqual(expected));

  test('the line to run out is that for the greatest need, 30 m less the π · 23 · 74 mm of one layer', () => {
    expect(about({ winch: winch('15 kN') }, ['pull-on-high-layer']).map((f) => f.finding.help)).toEqual(['start with more line out, 24.66 m of it, or double the line over a block']);
  });
});

describe('line out', () => {
  const rules = ['reach-too-short', 'wraps-lost-at-reach'];
  // The strap at the anchor bridges nothing to its 3 m.
  const cases: readonly (readonly [reach: string, said: readonly string[]])[] = [
    ['27.6 m', []],
    ['27.7 m', ['error[wraps-lost-at-reach]: `off-the-ford` takes 24.7 to 27.7 m of line; 27.67 m are usable while `bow-winch` keeps 10 wraps']],
    ['30 m', ['error[wraps-lost-at-reach]: `off-the-ford` takes 27 to 30 m of line; 27.67 m are usable while `bow-winch` keeps 10 wraps']],
    ['31.5 m', ['warning[reach-too-short]: `off-the-ford` takes 28.5 to 31.5 m of line; `main` is 30 m long']],
    ['33 m', ['error[reach-too-short]: `off-the-ford` takes 30 to 33 m of line; `main` is 30 m long']],
    ['34 m', ['error[reach-too-short]: `off-the-ford` takes 31 to 34 m of line; `main` is 30 m long']],
  ];
  test.each(cases)('a reach of %s', (reach, expected) => expect(said({ pull: pullWith({ reach: `reach     ${reach}` }) }, ...rules)).toEqual(expected));
});

describe('what the pull loads', () => {
  const rules = ['link-overloaded-by-pull', 'line-overloaded-by-pull', 'point-overloaded', 'anchor-overloaded', 'anchor-vehicle-too-light', 'deadman-too-short'];
  const cases: readonly (readonly [what: string, parts: PullParts, said: readonly string[]])[] = [
    ['a load is rounded up', { gear: gear('wll 25 kN'), pull: pullWith({ resistance: 'resistance  30.04 kN "load cell"' }) }, ['error[link-overloaded-by-pull]: load on `trunk` in `off-the-ford` is 30.1 kN, above its working limit of 25 kN']],
    ['a load at the limit', { gear: gear('wll 30 kN'), pull: tonnes30 }, []],
    ['a limit that only a factor gives is practice', { gear: gear('breaking 99 kN'), pull: tonnes30 }, ['warning[link-overloaded-by-pull]: load on `trunk` in `off-the-ford` is 30 kN, above its working limit of 19.8 kN, which the factor leaves of its breaking strength']],
    ['a limit of a table is a limit', { chain: 'chain to-the-larch {\n  main outboard -> shackle bow 11 mm AS-2741 -> trunk -> larch\n}\n', pull: tonnes30 }, ['error[link-overloaded-by-pull]: load on `shackle bow 11 mm AS-2741` in `off-the-ford` is 30 kN, above its working limit of 14.7 kN']],
    ['what may break it is an error, whatever gave the limit', { gear: gear('breaking 12.5 kN') }, ['error[link-overloaded-by-pull]: load on `trunk` in `off-the-ford` is 10.6 to 14.1 kN, above its working limit of 2.5 kN, which the factor leaves of its breaking strength']],
    ['what cannot break it is not', { gear: gear('breaking 14.2 kN') }, ['warning[link-overloaded-by-pull]: load on `trunk` in `off-the-ford` is 10.6 to 14.1 kN, above its working limit of 2.84 kN, which the factor leaves of its breaking strength']],
    ['a line breaks at the careful end of its strength', { line: line('15 kN') }, ['error[line-overloaded-by-pull]: pull on `main outboard` in `off-the-ford` is 10.6 to 14.1 kN, above its working limit of 4.5 to 5 kN, which the factor leaves of its breaking strength']],
    // 60 kN in soft dry sand: 0.25 to 0.85 and 0.208 of it, at most the 70 · 74 / 94 = 55.106 kN of layer 2. Of 58.7 kN a splice leaves 52.83 at least, half of it 26.4.
    ['an estimate passes a limit when its low end passes the careful end', { winch: winch('70 kN'), line: line('58.7 kN'), gear: gear('wll 20 t').replace('6.5 t', '20 t'), anchor: anchor('kind tree; holding 90 kN'), pull: pullWith({ load: 'load      plover 60 kN', surface: 'surface   soft-dry-sand' }), more: 'practice {\n  line-factor 2\n}\n' }, ['error[line-overloaded-by-pull]: pull on `main outboard` in `off-the-ford` is 27.4 to 55.2 kN, above its working limit of 26.4 to 29.4 kN, which the factor leaves of its breaking strength']],
    ['a point', { chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper stern\n}\n\nvehicle dipper {\n  mass   9 t\n  point  stern rated 2 t\n}\n', pull: tonnes30 }, ['error[point-overloaded]: load on `dipper stern` in `off-the-ford` is 30 kN, above its rating of 19.6 kN (2 t)']],
    ['an anchor whose holding power a table gives', { anchor: anchor('kind pickets; soil loam; pickets three-two-one'), pull: tonnes30 }, ['error[anchor-overloaded]: load on `larch` in `off-the-ford` is 30 kN, above its holding power of 17.7 kN']],
    ['a braked vehicle is said by its weight alone', { anchor: dipper + anchor('kind vehicle; vehicle dipper'), pull: tonnes30 }, ['error[anchor-vehicle-too-light]: `larch` weighs 17.6 kN, below the 45 kN that an anchor vehicle needs for this pull']],
    ['a braked vehicle whose holding somebody wrote is said by it', { anchor: dipper + anchor('kind vehicle; vehicle dipper; holding 20 kN'), pull: tonnes30 }, ['error[anchor-overloaded]: load on `larch` in `off-the-ford` is 30 kN, above its holding power of 20 kN']],
    ['a buried log is said by its length alone', { anchor: anchor(log), pull: tonnes30 }, ['error[deadman-too-short]: the log of `larch` is 1.2 m long, below the 1.39 m that this pull needs']],
    ['a buried log whose holding somebody wrote is said by it', { anchor: anchor(`${log}; holding 20 kN`), pull: tonnes30 }, ['error[anchor-overloaded]: load on `larch` in `off-the-ford` is 30 kN, above its holding power of 20 kN']],
  ];
  test.each(cases)('%s', (_what, parts, expected) => expect(said(parts, ...rules)).toEqual(expected));

  test('an end that holds does not speak for one that is not known', () => {
    const tail = 'line tail {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 12 m\n  breaking 140 kN\n  outboard eye thimble tube bury 72 d taper 24 d\n}\n';
    expect(notJudged({ more: tail, chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> tail inboard\n  tail outboard -> trunk -> larch\n}\n' }, 'line-overloaded-by-pull')).toEqual(['form of inboard end of tail']);
  });
});

describe('people and the bag', () => {
  test('people nearer than the line is long are said where their distance stands', () => {
    const near = (people: string) => ({ pull: pullWith({ people: `people    ${people}` }) });
    expect(said(near('29.9 m'), 'people-too-close')).toEqual(['error[people-too-close]: people of `off-the-ford` keep 29.9 m off, below the 33 m of the longest line in use']);
    expect(marked(pullExample(near('29.9 m')), 'people-too-close')).toBe('29.9 m');
    expect(said(near('33 m'), 'people-too-close')).toEqual([]);
  });

  const kit = (name: string, item: string): string => `kit ${name} {\n  holds    ${item}\n  carries  bow-22\n  carries  trunk\n}\n`;
  test('one damper in one of several bags is enough', () => {
    expect(said({ more: kit('front', 'shovel') + '\n' + kit('rear', 'damper') }, 'no-damper-in-kit')).toEqual([]);
    expect(said({ more: kit('front', 'shovel') + '\n' + kit('rear', 'shovel') }, 'no-damper-in-kit')).toEqual(['warning[no-damper-in-kit]: `off-the-ford` has no damper for its line: none is in `front`']);
  });
});

// Statics: the part of a weight along a slope is W sin α. 2,650 kg on 12°: 25,988 N × 0.2079 = 5.40 kN.
describe('a resistance that is written', () => {
  const of = (resistance: string, grade = 'grade     12 deg'): string[] => said({ pull: pullWith({ resistance: `resistance  ${resistance}`, grade }) }, 'resistance-below-grade', 'resistance-without-source');
  test.each([
    ['5.41 kN "load cell"', []],
    ['5.4 kN "load cell"', ['error[resistance-below-grade]: the resistance in `off-the-ford` is 5.4 kN, below the 5.41 kN that its weight alone makes on this grade']],
    ['2 kN', ['error[resistance-below-grade]: the resistance in `off-the-ford` is 2 kN, below the 5.41 kN that its weight alone makes on this grade', 'warning[resistance-without-source]: the resistance in `off-the-ford` does not say who measured it, or how']],
  ])('%s', (resistance, expected) => expect(of(resistance)).toEqual(expected));

  test('on the level it may be small', () => expect(of('2 kN "load cell"', 'grade     level')).toEqual([]));

  test('a share of the weight below the table names who measured it', () => {
    const gravel = surfaceNamed('gravel')!;
    const middle = Math.round((gravel.low + gravel.high) * 50);
    const takes = (text: string): string[] => said({ pull: pullWith({ surface: `surface   gravel ${text}` }) }, 'resistance-without-source');
    expect(takes('takes 0 %')).toHaveLength(1);
    // Within the range of the table it still makes the pull easier than the most of it.
    expect(takes(`takes ${middle} %`)).toHaveLength(1);
    expect(takes('takes 1 % "load cell, 2026-05-17"')).toEqual([]);
    expect(takes('takes 90 %')).toEqual([]);
  });
});

// Common practice: closed eyes are joined by something that opens.
describe('an eye round a thimble', () => {
  const joined = (route: string, more = ''): string[] => said({ chain: `chain to-the-larch {\n  ${route}\n}\n`, more }, 'nothing-joins-eyes');
  const spare = (thimble: string): string => `line spare {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 10 m\n  breaking 140 kN\n  inboard eye ${thimble} bury 72 d taper 24 d\n  outboard eye bury 72 d taper 24 d\n}\n`;
  test.each([
    ['main outboard -> trunk -> larch', '', 1],
    ['main outboard -> bow-22 -> trunk -> larch', '', 0],
    ['main outboard -> spare inboard\n  spare outboard -> bow-22 -> trunk -> larch', spare('thimble tube'), 1],
    ['main outboard -> bow-22 -> spare inboard\n  spare outboard -> trunk -> larch', spare('thimble tube'), 0],
  ])('%s', (route, more, times) => expect(joined(route, more)).toHaveLength(times));
});

test('a bridle of which the chain has one leg', () => {
  const bridle = (chain: string, more = ''): string[] => said({ chain, more, pull: pullWith({ bridle: 'bridle    60 deg' }) }, 'bridle-not-in-chain');
  expect(bridle('chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n}\n')).toEqual(['warning[bridle-not-in-chain]: `off-the-ford` gives the angle of a bridle, and what it pulls through has one leg']);
  expect(findingsIn(pullExample({ pull: pullWith({ bridle: 'bridle    60 deg' }) })).find((f) => f.code === 'bridle-not-in-chain')!.finding.help).toBe('write the second leg as a route of the chain that begins where the legs part, at one shackle or ring by its name, such as `bow-22 -> ...`; or leave `bridle` out');
  expect(bridle('chain to-the-larch {\n  main outboard -> bow-22\n  bow-22 -> trunk -> larch\n  bow-22 -> other -> birch\n}\n', 'strap other {\n  length 3 m\n  wll 5 t\n}\nanchor birch {\n  kind tree\n  holding 60 kN\n}\n')).toEqual([]);
});
