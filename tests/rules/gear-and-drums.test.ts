import { describe, expect, test } from 'vitest';
import type { Place } from '../../src-core/base/span.ts';
import type { Given } from '../../src-core/mechanics/derivation.ts';
import { readDay } from '../../src-core/model/day.ts';
import { rules } from '../../src-core/rules/all.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { wholeLine } from '../../src-core/rules/fix-text.ts';
import { loadAndLimit, sourceOfStandard } from '../../src-core/rules/force-text.ts';
import { exactly } from '../../src-core/units/amount.ts';
import { unitNamed } from '../../src-core/units/unit-table.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

const said = (text: string, code: string): string[] => findingsIn(text).filter((f) => f.code === code).map((f) => `${f.severity}: ${f.message}`);
const blocksOf = (text: string) => projectOf(text).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks;
const notJudged = (text: string, rule: string) => blocksOf(text).flatMap((b) => b.notJudged).filter((n) => n.rule === rule).map((n) => n.cause);
/** `line of the finding -> line: words` for everything a finding points at. */
function pointing(text: string, code: string): string[] {
  const project = projectOf(text);
  const lineOf = (place: Place): number => text.slice(0, project.file('test.rig')!.spanOf(place)!.start).split('\n').length;
  return project.findings('test.rig', readDay(testDay)!).filter((f) => f.code === code).map((f) => [`${lineOf(f.place)}`, ...f.related.map((r) => `${lineOf(r.place)}: ${r.message}`)].join(' -> '));
}

interface Parts {
  readonly winch?: string;
  readonly material?: string;
  readonly tail?: string;
  readonly bow?: string;
  readonly trunk?: string;
  readonly chain?: string;
  readonly more?: string;
}

const rig = ({ winch = 'rated 20 kN', material = 'HMPE', tail = 'breaking 92 kN', bow = 'form bow\n  body 30 mm\n  wll 8.5 t', trunk = 'wll 4 t', chain = 'main outboard -> bow-22 -> trunk -> larch', more = '' }: Parts = {}): string => `winch bow-winch {
  ${winch}
  carries main
}

line main {
  material HMPE
  strands  12
  diameter 10 mm
  length   30 m
  breaking 92 kN
  outboard eye thimble tube bury 72 d taper 24 d
  2026-05-02 fitted
}

line tail {
  material ${material}
  strands  12
  diameter 10 mm
  length   12 m
  inboard  eye bury 72 d taper 24 d
  outboard eye thimble tube bury 72 d taper 24 d
  2026-05-02 fitted
  ${tail}
}

shackle bow-22 {
  ${bow}
}

strap trunk {
  ${trunk}
}

anchor larch {
  kind    tree
  holding 40 kN
}

chain reach {
  ${chain}
}
${more}`;

test('the rules that compare with a rating, which nobody may set aside', () => {
  expect(rules.filter((rule) => rule.citesRating).map((rule) => rule.name).sort()).toEqual([
    'anchor-overloaded', 'block-overloaded', 'block-too-small-for-line', 'bridle-too-wide', 'line-weaker-than-winch', 'link-above-breaking', 'link-above-limit',
    'link-overloaded-by-pull', 'point-overloaded', 'pull-on-high-layer', 'rating-mixed-up', 'side-load-over-90', 'winch-above-working-limit', 'winch-too-weak-for-pull',
  ]);
});

describe('what hangs on what', () => {
  test.each([
    ['an anchor at the beginning of a route', { chain: 'larch -> trunk -> bow-22 -> main outboard' }, 'anchor-mid-route', []],
    ['an anchor as the second of three', { chain: 'trunk -> larch -> bow-22' }, 'anchor-mid-route', ['warning: `larch` stands in the middle of a route, where an anchor ends it']],
    ['a vehicle as the second of three', { chain: 'trunk -> plover bow -> bow-22', more: '\nvehicle plover {\n  mass 2 t\n  point bow rated 2 t\n}\n' }, 'anchor-mid-route', ['warning: `plover bow` stands in the middle of a route, where a vehicle ends it']],
    ['an empty chain is not said to lack its anchor', { chain: '' }, 'chain-without-anchor', []],
    ['an empty chain', { chain: '' }, 'chain-without-route', ['warning: `reach` has no route']],
    ['a chain that gives only how much line is out', { chain: 'out 21 m' }, 'chain-without-route', ['warning: `reach` has no route']],
    ['a chain whose only line cannot be read', { chain: 'out 21 parsecs' }, 'chain-without-route', []],
    ['a chain whose only head is unknown', { chain: 'otu 21 m' }, 'chain-without-route', []],
    ['one end joined to two things', { chain: 'main outboard -> bow-22 -> larch\n  main outboard -> trunk -> larch' }, 'end-used-twice', ['warning: `main outboard` is joined to `bow-22` and `trunk`']],
    ['a bow shackle may join three', { chain: 'main outboard -> bow-22 -> larch\n  bow-22 -> trunk -> larch' }, 'end-used-twice', []],
    ['a line whose end is not written', { chain: 'main outboard -> bow-22 -> tail -> trunk -> larch' }, 'end-used-twice', []],
    ['a strap that joins two', {}, 'joins-more-than-two', []],
  ])('%s', (_what, parts, code, expected) => {
    expect(said(rig(parts), code)).toEqual(expected);
  });

  test('what is joined besides is pointed at', () => {
    const points = (text: string, code: string, from: string, to: string): void => {
      const lineOf = (words: string): number => text.split('\n').findIndex((line) => line.trim() === words) + 1;
      expect(pointing(text, code)).toEqual([`${lineOf(from)} -> ${lineOf(to)}: joined here too`]);
    };
    points(rig({ chain: 'main outboard -> bow-22 -> larch\n  main outboard -> trunk -> larch' }), 'end-used-twice', 'main outboard -> bow-22 -> larch', 'main outboard -> trunk -> larch');
    points(rig({ chain: 'main outboard -> trunk -> bow-22 -> larch\n  trunk -> plover bow', more: '\nvehicle plover {\n  mass 2 t\n  point bow rated 2 t\n}\n' }), 'joins-more-than-two', 'main outboard -> trunk -> bow-22 -> larch', 'trunk -> plover bow');
  });

  test('the end on the drum is offered as the other end', () => {
    const found = findingsIn(rig({ chain: 'main inboard -> bow-22 -> larch' })).find((f) => f.code === 'drum-end-in-chain')!;
    expect(found.finding.fixes.map((fix) => [fix.title, ...fix.edits.map((e) => e.text)])).toEqual([['Write `main outboard`', 'outboard']]);
  });
});

describe('what fits what', () => {
  const van = '\nvehicle plover {\n  mass 2 t\n  point stern rated 2 t opening 40 mm\n  point bow rated 2 t opening 28 mm\n}\n';
  test.each([
    ['the opening of the point that is meant', { chain: 'main outboard -> bow-22 -> plover bow', more: van }, ['error: body of `bow-22` is 30 mm, above the 28 mm opening of `plover bow`']],
    ['and not that of another', { chain: 'main outboard -> bow-22 -> plover stern', more: van }, []],
    ['a ring', { chain: 'main outboard -> bow-22 -> master -> larch', more: '\nring master {\n  inside 29 mm\n  wll 5 t\n}\n' }, ['error: body of `bow-22` is 30 mm, above the 29 mm opening of `master`']],
    ['a ring as wide as the body', { chain: 'main outboard -> bow-22 -> master -> larch', more: '\nring master {\n  inside 30 mm\n  wll 5 t\n}\n' }, []],
    // Geometry: a bar passes an opening that is not smaller than itself.
    ['a thimble that the body does not pass', { chain: 'main outboard -> tube -> bow-22 -> larch', more: '\nthimble tube {\n  inside 25 mm\n}\n' }, ['error: body of `bow-22` is 30 mm, above the 25 mm opening of `tube`']],
    ['and the thinner pin does', { chain: 'main outboard -> tube -> bow-22 -> larch', bow: 'body 30 mm\n  pin 25 mm\n  wll 8 t', more: '\nthimble tube {\n  inside 25 mm\n}\n' }, []],
    ['or does not', { chain: 'main outboard -> tube -> bow-22 -> larch', bow: 'body 30 mm\n  pin 26 mm\n  wll 8 t', more: '\nthimble tube {\n  inside 25 mm\n}\n' }, ['error: pin of `bow-22` is 26 mm, above the 25 mm opening of `tube`']],
    ['a ring too thick for a shackle', { chain: 'main outboard -> bow-22 -> master -> larch', bow: 'body 30 mm\n  inside 40 mm\n  wll 8 t', more: '\nring master {\n  body 41 mm\n  wll 5 t\n}\n' }, ['error: body of `master` is 41 mm, above the 40 mm opening of `bow-22`']],
    ['a hook in a ring', { chain: 'main outboard -> bow-22 -> master -> clevis -> larch', more: '\nring master {\n  inside 30 mm\n  wll 5 t\n}\nhook clevis {\n  body 31 mm\n  wll 5 t\n}\n' }, ['error: body of `clevis` is 31 mm, above the 30 mm opening of `master`']],
  ])('%s', (_what, parts, expected) => {
    expect(said(rig(parts), 'does-not-fit')).toEqual(expected);
  });

  test.each([['30 mm', []], ['29 mm', ['warning: `tail` inboard eye of 10 mm bends over 29 mm at `bow-22`: 2.9 times its diameter, below 3 times']]])('a polyester eye over %s', (body, expected) => {
    expect(said(rig({ material: 'polyester', bow: `body ${body}\n  wll 8 t`, chain: 'main outboard -> bow-22 -> tail inboard' }), 'bend-over-small-pin')).toEqual(expected);
  });

  // A rope maker's usage notes: 3 times the rope's diameter, standing still round a pin.
  test.each([
    ['ring', 'body 30 mm', []],
    ['ring', 'body 8 mm', ['warning: `tail` inboard eye of 10 mm bends over 8 mm at `master`: 0.8 times its diameter, below 3 times']],
    ['hook', 'body 29 mm', ['warning: `tail` inboard eye of 10 mm bends over 29 mm at `master`: 2.9 times its diameter, below 3 times']],
  ])('a polyester eye in a %s of %s', (head, body, expected) => {
    const text = (what: string): string => rig({ material: 'polyester', chain: 'main outboard -> master -> tail inboard', more: `\n${head} master {\n  wll 8 t\n${what}}\n` });
    expect(said(text(`  ${body}\n`), 'bend-over-small-pin')).toEqual(expected);
    expect(findingsIn(text('')).map((f) => f.message)).toContainEqual(expect.stringContaining('body diameter of `master` is not given'));
  });

  test.each(['main outboard -> snatch -> trunk -> larch', 'larch -> trunk -> snatch -> main outboard'])('a line too thick for the block in %s', (chain) => {
    expect(said(rig({ chain, more: '\nblock snatch {\n  takes 9 mm\n  wll 8 t\n}\n' }), 'block-too-small-for-line')).toEqual(['error: `main` is 10 mm thick, above the 9 mm that `snatch` takes']);
    expect(said(rig({ chain, more: '\nblock snatch {\n  takes 10 mm\n  wll 8 t\n}\n' }), 'block-too-small-for-line')).toEqual([]);
  });
});

describe('loads on links', () => {
  const links = ['link-above-breaking', 'link-above-factor', 'link-above-limit'];
  const about = (text: string): string[] => findingsIn(text).filter((f) => links.includes(f.code)).map((f) => `${f.code}: ${f.message}`);
  const withTail = 'main outboard -> bow-22 -> tail inboard\n  tail outboard -> trunk -> larch';
  // Nine tenths of 21 kN are 18.9 kN: at that end it breaks under 20 kN, and its factor is not spoken of again.
  test('a line that may break is said at its weaker end, with the place, once', () => {
    expect(about(rig({ chain: withTail, tail: 'breaking 21 kN' }))).toEqual(['link-above-breaking: pull on `tail inboard` is 20 kN, above the 18.9 to 21 kN at which it breaks, at its outboard end']);
  });

  test('what the winch pulls at its most can be made less by writing how much line is out', () => {
    const help = (parts: Parts): string => findingsIn(rig({ trunk: 'wll 17.5 kN', ...parts })).find((f) => f.code === 'link-above-limit')!.finding.help;
    const drum = 'rated 20 kN at layer 1\n  barrel 64 mm\n  width 230 mm\n  flange 165 mm\n  keep 10 wraps';
    const clause = 'where less line is out the winch pulls less: write `out`';
    expect(help({ winch: drum })).toContain(clause);
    expect(help({ winch: drum, chain: 'main outboard -> bow-22 -> trunk -> larch\n  out 27 m' })).not.toContain(clause);
  });

  const newton = unitNamed('kN');
  const load = (N: number, origin: Given['origin']): Given => ({ amount: exactly(N), kind: 'load', origin });
  const place: Place = { chunk: { text: '19.9 kN' }, start: 0, end: 7 };
  const limit = load(19_900, { from: 'written', place, unit: newton });
  test('a load that was worked out is shown rounded up, one that was written as it stands', () => {
    const constant: Given['origin'] = { from: 'derived', derivation: { calculation: 'pull', means: 'pull', symbol: 'F', amount: exactly(20_042), kind: 'load', formula: 'F', inputs: [], sources: [], assumptions: [], notes: [] } };
    expect(loadAndLimit(load(20_042, constant), limit)).toMatchObject({ load: '20.1 kN', limit: '19.9 kN' });
    expect(loadAndLimit(load(20_042, { from: 'written', place, unit: newton }), limit)).toMatchObject({ load: '20 kN', limit: '19.9 kN' });
  });

  test('each standard by its own document', () => {
    expect(sourceOfStandard('AS-2741')).toMatch(/AS 2741/);
    expect(sourceOfStandard('RR-C-271')).toMatch(/RR-C-271/);
  });

  test('a whole line is taken from its beginning to its break, also the first of a text', () => {
    const chunk = { text: 'abc\ndef\nghi' };
    expect(wholeLine({ chunk, start: 1, end: 2 })).toEqual({ chunk, start: 0, end: 4 });
    expect(wholeLine({ chunk, start: 5, end: 6 })).toEqual({ chunk, start: 4, end: 8 });
    expect(wholeLine({ chunk, start: 9, end: 9 })).toEqual({ chunk, start: 8, end: 11 });
  });

  test.each([['a { def }\n', false], ['a {\n  def }\n', false], ['a { def\n}\n', false], ['a {\n  def  # {\n}\n', true]])('a brace on its line stays: %j', (text, taken) => {
    const chunk = { text };
    const place = { chunk, start: text.indexOf('def'), end: text.indexOf('def') + 3 };
    expect(wholeLine(place)).toEqual(taken ? { chunk, start: 4, end: text.lastIndexOf('}') } : place);
  });
});

describe('gear', () => {
  const dee = (angle: string): string => `shackle dee-19 {\n  form dee\n  body 19 mm\n  wll 4.7 t\n  load-from ${angle}\n}\n`;
  test.each([['5 deg', []], ['5.1 deg', ['warning: dee shackle `dee-19` is loaded from 5.1 deg; up to 5 deg counts as in line']], ['6 deg', ['warning: dee shackle `dee-19` is loaded from 6 deg; up to 5 deg counts as in line']]])('a dee shackle from %s', (angle, expected) => {
    expect(said(dee(angle), 'dee-side-loaded')).toEqual(expected);
  });

  test.each([['1.5 m', []], ['1.51 m', ['warning: the log of `deadman` is 1.51 m long, above 5 times its thickness, 1.5 m']]])('a log of %s and 30 cm', (length, expected) => {
    expect(said(`anchor deadman {\n  kind buried-log\n  log ${length} face 30 cm\n  depth 1.5 m\n  slope 3\n  soil loam\n}\n`, 'deadman-too-slender')).toEqual(expected);
  });

  test.each([
    ['one and a half times', 'strap s {\n  wll 4 t\n  breaking 6 t\n}\n', ['warning: breaking strength of `s` is 1.5 times its working limit, below the design factor of 5']],
    ['without a written limit', 'shackle s {\n  form bow\n  body 19 mm\n  made-to AS-2741\n  breaking 10 t\n}\n', []],
    ['without a written breaking strength', 'shackle s {\n  form bow\n  body 19 mm\n  made-to AS-2741\n  wll 4.7 t\n}\n', []],
  ])('a design factor: %s', (_what, text, expected) => {
    expect(said(text, 'design-factor-low')).toEqual(expected);
  });
});

describe('winches', () => {
  const winch = (more: string, material = 'material HMPE'): string => `line main {\n  ${material}\n  diameter 10 mm\n  length 30 m\n}\n\nwinch bow-winch {\n  carries main\n  ${more}\n}\n`;
  const causes = (text: string, rule: string): string[] => notJudged(text, rule).map((c) => `${c.reported === true ? 'said' : 'not said'}: ${c.says}`);
  test.each([
    ['nothing', '', ['not said: condition of the fairlead of `bow-winch` is not given']],
    ['no condition', 'fairlead hawse', ['not said: condition of the fairlead of `bow-winch` is not given']],
    ['a condition that cannot be read', 'fairlead hawse condition fair', ['said: condition of the fairlead of `bow-winch` is not given']],
    ['a kind that cannot be read', 'fairlead bull', ['said: condition of the fairlead of `bow-winch` is not given']],
    ['a condition', 'fairlead hawse condition sound', []],
  ])('of the fairlead: %s', (_what, more, expected) => {
    expect(causes(winch(more), 'fairlead-damaged')).toEqual(expected);
  });

  test('a sharp fairlead is an error, a scored one a warning', () => {
    expect(said(winch('fairlead hawse condition sharp'), 'fairlead-damaged')).toEqual([expect.stringMatching(/^error: fairlead of `bow-winch` is .*, and `main` is HMPE$/)]);
    expect(said(winch('fairlead hawse condition scored'), 'fairlead-damaged')).toEqual([expect.stringMatching(/^warning: fairlead of `bow-winch` is .*, and `main` is HMPE$/)]);
  });

  test.each([
    ['not written', '', undefined, ['not said: where the brake of `bow-winch` sits is not given']],
    ['that cannot be read', 'brake inside', undefined, ['said: where the brake of `bow-winch` sits is not given']],
    ['outside', 'brake outside', undefined, []],
    ['not written, with another material', '', 'material polyester', []],
    ['that cannot be read, with another material', 'brake inside', 'material polyester', []],
    ['with a material that nobody wrote', 'brake in-drum', 'strands 12', ['not said: material of `main` is not given']],
  ])('a brake %s', (_what, more, material, expected) => {
    expect(causes(winch(more, material), 'brake-heats-line')).toEqual(expected);
    expect(said(winch(more, material), 'brake-heats-line')).toEqual([]);
  });

  test('a piece that is cut off only later, and one that is only planned', () => {
    const text = (log: string, more = ''): string => `winch bow-winch {\n  carries tail\n}\n\nline main {\n  diameter 10 mm\n  length 30 m\n  ${log}\n}\n${more}`;
    expect(said(text('2026-07-02 cut at 12 m from inboard keep tail'), 'carries-absent-piece')).toEqual(['error: `tail` is not a piece of `main` on 2026-07-01']);
    expect(said(text('2026-07-01 cut at 12 m from inboard keep tail'), 'carries-absent-piece')).toEqual([]);
    expect(said(text('', '\nrepair split on main {\n  cut at 12 m from inboard keep tail\n}\n'), 'carries-absent-piece')).toEqual(['error: `tail` exists only after `split`, which is a plan']);
  });

  test('the second winch with a line is said, and points at the first', () => {
    const text = 'winch bow-winch {\n  carries main\n}\n\nwinch stern-winch {\n  carries main\n}\n\nline main {\n  length 30 m\n}\n';
    expect(said(text, 'line-on-two-drums')).toEqual(['error: `main` is on `stern-winch` and on `bow-winch`']);
    expect(pointing(text, 'line-on-two-drums')).toEqual(['6 -> 1: the other winch']);
  });

  test('a drum is checked for contradiction only by sizes that are known', () => {
    const made = (sizes: string): number => blocksOf(`winch w {\n  ${sizes}\n}\n`)[0]!.made;
    expect(made('flange 165 mm')).toBe(made(''));
    expect(made('barrel 64 mm')).toBe(made(''));
    expect(made('width 230 mm')).toBe(made(''));
    expect(made('barrel 64 mm\n  flange 165 mm')).toBe(made('') + 1);
  });

  test('a line weaker than the winch is not said again for its factor', () => {
    // The eye keeps 90 to 100 % of 92 kN, at the least 82.8 kN.
    const pulls = (rated: string) => said(`winch w {\n  rated ${rated}\n  carries main\n}\n\n${rig().slice(rig().indexOf('line main'), rig().indexOf('line tail'))}`, 'line-factor-too-low');
    expect(pulls('85 kN')).toEqual([]);
    expect(pulls('82.8 kN')).toHaveLength(1);
  });

  const drum = (flange: string): string => `winch w {\n  rated 42 kN\n  barrel 64 mm\n  width 230 mm\n  flange ${flange}\n  carries main\n}\n\nline main {\n  material HMPE\n  diameter 10 mm\n  length 30 m\n}\n`;
  test('an overfull drum says how much fits, or rests on practice', () => {
    const found = (flange: string) => findingsIn(drum(flange)).find((f) => f.code === 'drum-overfull')!;
    expect(found('140 mm').severity).toBe('error');
    expect(found('140 mm').finding.source).toBe('geometry of the drum; common practice for the height of the flange above the line');
    expect(found('140 mm').finding.help).toMatch(/^at most [\d.]+ m of this line fits: /);
    expect(found('153 mm').severity).toBe('warning');
    expect(found('153 mm').finding.source).not.toBe(found('140 mm').finding.source);
  });
});

describe('pulls', () => {
  test.each([['45 deg', []], ['100 %', []], ['46 deg', ['warning: `off-the-ford` goes up 46 deg, above 45 deg']], ['101 %', 1]] as const)('up %s', (grade, expected) => {
    const found = said(pullExample({ pull: pullWith({ grade: `grade ${grade}` }) }), 'grade-too-steep');
    if (typeof expected === 'number') expect(found).toHaveLength(expected);
    else expect(found).toEqual(expected);
  });

  test('gear that is overloaded is no anchor', () => {
    const rule = rules.find((r) => r.name === 'link-overloaded-by-pull')!;
    expect(said(rule.bad, 'link-overloaded-by-pull')).toHaveLength(1);
    expect(said(rule.bad, 'anchor-overloaded')).toEqual([]);
  });

  test.each([['120 deg', 0], ['120.5 deg', 1], ['121 deg', 1]])('a bridle of %s', (angle, count) => {
    const rule = rules.find((r) => r.name === 'bridle-too-wide')!;
    expect(said(rule.bad.replace('130 deg', angle), 'bridle-too-wide')).toHaveLength(count);
  });
});

// Steel gear counts like a shackle (ASME B30.26); no figure for points was found.
test.each([
  ['rated 4.7 t breaking 5 t', '', ['warning: breaking strength of `plover bow` is 1.0 times its working limit, below the design factor of 5']],
  ['rated 4.7 t breaking 4 t', '', ['error: breaking strength of `plover bow` is 0.8 times its working limit, below the design factor of 5']],
  ['rated 4.7 t breaking 23.4 t', '', ['warning: breaking strength of `plover bow` is 4.9 times its working limit, below the design factor of 5']],
  ['rated 4.7 t breaking 23.5 t', '', []],
  ['rated 4.7 t breaking 10 t', 'practice {\n  design-factor  point 2 "the maker of the points"\n}\n', []],
  ['rated 4.7 t breaking 9 t', 'practice {\n  design-factor  point 2 "the maker of the points"\n}\n', ['warning: breaking strength of `plover bow` is 1.9 times its working limit, below the design factor of 2']],
  ['rated 4.7 t', '', []],
  ['breaking 5 t', '', []],
])('a point %s', (point, more, expected) => expect(said(`vehicle plover {\n  mass 2 t\n  point bow ${point}\n}\n${more}`, 'point-factor-low')).toEqual(expected));

describe('a drum and the line on it', () => {
  const drum = (material: string, barrel: string, rated = 'rated 42 kN', flange = '165 mm'): string => `winch w {\n  ${rated}\n  barrel ${barrel}\n  width 230 mm\n  flange ${flange}\n  carries main\n}\nline main {\n  material ${material}\n  diameter 10 mm\n  length 20 m\n}\n`;
  // A rope maker asks 5 to 20 times for a sheave; what a bend leaves of wire is published from 6 times on.
  test.each([
    ['HMPE', '20 mm', ['information: barrel of `w` is 20 mm, 2.0 times the 10 mm of `main`, below the 5 times that is asked of a sheave']],
    ['HMPE', '45 mm', ['information: barrel of `w` is 45 mm, 4.5 times the 10 mm of `main`, below the 5 times that is asked of a sheave']],
    ['HMPE', '50 mm', []],
    ['wire', '50 mm', ['information: barrel of `w` is 50 mm, 5.0 times the 10 mm of `main`, below the 6 times that is asked of a sheave']],
    ['wire', '60 mm', []],
  ])('%s on a barrel of %s', (material, barrel, expected) => expect(said(drum(material, barrel), 'barrel-too-thin')).toEqual(expected));

  // (165 − 64) / 2 mm is 5.05 layers of 10 mm: the sixth has begun below the flange, the seventh lies above it.
  test.each([
    ['at layer 6', '165 mm', []],
    ['at layer 7', '165 mm', ['error: `w` is rated on layer 7, and 5 layers of its line fit below its flange']],
    ['at layer 3', '85 mm', ['error: `w` is rated on layer 3, and 1 layer of its line fits below its flange']],
    ['', '70 mm', []],
  ])('rated %s on a flange of %s', (layer, flange, expected) => expect(said(drum('HMPE', '64 mm', `rated 42 kN ${layer}`, flange), 'rated-layer-absent')).toEqual(expected));
  test('nothing is worked out from a layer that is not there', () => {
    const errors = (layer: number): string[] => findingsIn(pullExample().replace('rated    42 kN', `rated    42 kN at layer ${layer}`)).filter((f) => f.severity === 'error').map((f) => f.code);
    expect(errors(7)).toEqual(['rated-layer-absent']);
    // As high as that the winch is too strong for its line and its gear.
    expect(errors(6)).not.toEqual([]);
    expect(errors(6)).not.toContain('rated-layer-absent');
  });
  test('a layer that is not there is said once, and asked about where the flange is not given', () => {
    expect(said(drum('HMPE', '64 mm', 'rated 42 kN at layer 7'), 'rated-layer-not-first')).toEqual([]);
    expect(said(drum('HMPE', '64 mm', 'rated 42 kN at layer 6'), 'rated-layer-not-first')).toHaveLength(1);
    expect(notJudged(drum('HMPE', '64 mm', 'rated 42 kN at layer 7').replace('  flange 165 mm\n', ''), 'rated-layer-absent').map((c) => c.says)).toEqual(['flange diameter of `w` is not given']);
  });
});
