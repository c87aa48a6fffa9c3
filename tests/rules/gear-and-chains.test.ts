import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

interface Parts {
  readonly winch?: string;
  readonly tail?: string;
  readonly bow?: string;
  readonly trunk?: string;
  readonly larch?: string;
  readonly chain?: string;
  readonly on?: string;
  readonly more?: string;
}

/** A chain whose every link holds, with parts of it put in another way. */
const rig = ({ winch = 'rated 20 kN', tail = 'breaking 92 kN', bow = 'body 22 mm\n  wll 6.5 t', trunk = 'wll 4 t', larch = 'holding 40 kN', chain = 'main outboard -> bow-22 -> tail inboard\n  tail outboard -> bow-23 -> trunk -> larch', on = '', more = '' }: Parts = {}): string => `winch bow-winch${on} {
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
}

line tail {
  material HMPE
  strands  12
  diameter 10 mm
  length   12 m
  inboard  eye bury 72 d taper 24 d
  outboard eye thimble tube bury 72 d taper 24 d
  ${tail}
}

shackle bow-22 {
  ${bow}
}

shackle bow-23 {
  body 22 mm
  wll  6.5 t
}

strap trunk {
  ${trunk}
  kind static
  hitch straight
}

anchor larch {
  kind    tree
  ${larch}
}

chain reach {
  ${chain}
}
${more}`;

const own = (vehicle: string): string => `\nanchor own {\n  kind vehicle\n  vehicle ${vehicle}\n}\nvehicle plover {\n  mass 1,000 kg\n}\nvehicle dipper {\n  mass 1,000 kg\n}\n`;
const about = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.severity}[${f.code}]: ${f.message}`);
const loads = ['link-above-limit', 'link-above-factor', 'link-above-breaking'];

const chainOf = (text: string) => {
  const judged = projectOf(text).judge('test.rig', readDay(testDay)!);
  return judged.files.get('test.rig')!.blocks.find((b) => b.block.definition.head === 'chain')!;
};

/** The text with a fix of the first finding of a rule carried out. */
function fixed(text: string, code: string, title: string): string {
  const project = projectOf(text);
  const file = project.file('test.rig')!;
  const fix = project.findings('test.rig', readDay(testDay)!).find((f) => f.code === code)!.fixes.find((f) => f.title === title)!;
  const edits = fix.edits.map((e) => ({ ...file.spanOf(e.place)!, text: e.text })).sort((x, y) => y.start - x.start);
  return edits.reduce((all, e) => all.slice(0, e.start) + e.text + all.slice(e.end), file.text);
}

describe('what loads a link, against what it may take', () => {
  const cases: readonly (readonly [what: string, parts: Parts, said: readonly string[]])[] = [
    ['every link holds', {}, []],
    ['a load at the limit is within it', { trunk: 'wll 20 kN' }, []],
    ['a load above the limit', { trunk: 'wll 19.9 kN' }, ['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 19.9 kN']],
    ['the limit in the unit of the file', { winch: 'rated 9,500 lbf', larch: 'holding 12,000 lbf', trunk: 'wll 4 short-tons' }, ['error[link-above-limit]: load on `trunk` is 9,500 lbf, above its working limit of 8,000 lbf (4 short-tons)', 'warning[link-above-factor]: pull on `tail inboard` is 9,500 lbf, above the 6,200 to 6,900 lbf that a factor of 3 leaves of its breaking strength of 18,600 to 20,700 lbf']],
    ['an anchor by what it holds', { larch: 'holding 15 kN' }, ['error[link-above-limit]: load on `larch` is 20 kN, above its holding power of 15 kN']],
    ['an anchor of which nobody knows what it holds', { larch: 'girth 1.3 m' }, ['not judged: holding power of `larch` is not given, and no table gives it for a tree']],
    ['the winch\'s own vehicle, called an anchor', { on: ' on plover', chain: 'main outboard -> bow-22 -> own', more: own('plover') }, ['not judged: `own` is the vehicle that `bow-winch` stands on, so the chain alone does not tell what it has to hold']],
    // A braked vehicle holds 0.666 of its weight (towing training text): 9.81 kN * 0.666.
    ['another vehicle, called an anchor', { on: ' on plover', chain: 'main outboard -> bow-22 -> own', more: own('dipper') }, ['warning[link-above-limit]: load on `own` is 20 kN, above its holding power of 6.53 kN']],
    ['a side load of 45 degrees leaves 70 %', { bow: 'body 22 mm\n  wll 25 kN\n  load-from 45 deg' }, ['error[link-above-limit]: load on `bow-22` is 20 kN, above its working limit of 17.5 kN']],
    ['a side load of 5 degrees leaves all', { bow: 'body 22 mm\n  wll 20 kN\n  load-from 5 deg' }, []],
    ['a choker has what its label gives for one', { trunk: 'wll 39 kN\n  hitch choker wll 21 kN' }, []],
    ['and that may be less than half', { trunk: 'wll 41 kN\n  hitch choker wll 19.5 kN' }, ['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 19.5 kN']],
    ['no more than it has straight', { trunk: 'wll 19.5 kN\n  hitch choker wll 39 kN' }, ['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 19.5 kN']],
    ['a choker has half', { trunk: 'wll 39 kN\n  hitch choker' }, ['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 19.5 kN']],
    ['a basket is not counted twice', { trunk: 'wll 19 kN\n  hitch basket' }, ['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 19 kN']],
    ['breaking strength over the design factor', { trunk: 'breaking 99 kN' }, ['warning[link-above-factor]: load on `trunk` is 20 kN, above the 19.8 kN that a factor of 5 leaves of its breaking strength of 99 kN']],
    ['a shop\'s own design factor', { trunk: 'breaking 99 kN', more: '\npractice {\n  design-factor strap 4\n}\n' }, []],
    ['above breaking strength, said once and not for the factor again', { trunk: 'breaking 19 kN' }, ['error[link-above-breaking]: load on `trunk` is 20 kN, above the 19 kN at which it breaks']],
    ['a line at its factor, the weaker end only', { tail: 'breaking 60 kN' }, ['warning[link-above-factor]: pull on `tail inboard` is 20 kN, above the 18 to 20 kN that a factor of 3 leaves of its breaking strength of 54 to 60 kN']],
    ['a line above its written limit', { tail: 'breaking 92 kN\n  working 18 kN' }, ['error[link-above-limit]: pull on `tail inboard` is 20 kN, above its working limit of 18 kN']],
    ['a written limit holds without a breaking strength', { tail: 'working 18 kN' }, ['error[link-above-limit]: pull on `tail inboard` is 20 kN, above its working limit of 18 kN', 'not judged: breaking strength of `tail` is not given']],
    ['a line of unknown strength is not judged', { tail: '' }, ['not judged: breaking strength of `tail` is not given']],
    ['what cut strands leave', { tail: 'breaking 30 kN\n  2026-06-01 damage cut 6 strands at 6 m from inboard' }, ['error[link-above-breaking]: pull on `tail inboard` is 20 kN, above the 15 kN at which it breaks, at its 6 cut strands at 6 m from inboard']],
    ['a size has no limit', { chain: 'main outboard -> shackle bow 19 mm -> trunk -> larch' }, ['not judged: working load limit of `shackle bow 19 mm` is not given: a size alone has none']],
    ['a size and its standard', { chain: 'main outboard -> shackle bow 11 mm AS-2741 -> trunk -> larch' }, ['error[link-above-limit]: load on `shackle bow 11 mm AS-2741` is 20 kN, above its working limit of 14.7 kN']],
    ['two shackles of one form are two links', { chain: 'main outboard -> shackle bow 11 mm AS-2741 -> trunk -> shackle bow 6 mm AS-2741 -> larch' }, ['error[link-above-limit]: load on `shackle bow 11 mm AS-2741` is 20 kN, above its working limit of 14.7 kN', 'error[link-above-limit]: load on `shackle bow 6 mm AS-2741` is 20 kN, above its working limit of 4.9 kN']],
    ['two winches, line to line', { chain: 'main outboard -> bow-22 -> tail outboard', more: '\nwinch stern-winch {\n  rated 90 kN\n  carries tail\n}\n' }, ['not judged: `bow-winch` and `stern-winch` carry lines of `reach`, and which of them loads it is not given']],
    ['two winches, of which one is said to load it', { chain: 'main outboard -> bow-22 -> tail outboard\n  with stern-winch', bow: 'body 22 mm\n  wll 89 kN', tail: 'breaking 300 kN', more: '\nwinch stern-winch {\n  rated 90 kN\n  carries tail\n}\n' }, ['error[link-above-breaking]: pull on `main outboard` is 90 kN, above the 82.8 to 92 kN at which it breaks, at its outboard end', 'error[link-above-limit]: load on `bow-22` is 90 kN, above its working limit of 89 kN']],
    ['no winch', { winch: 'rated 20 kN', chain: 'bow-22 -> trunk -> larch' }, ['not judged: no winch carries a line of `reach`, so what loads it is not known']],
    ['a block that the line turns at has twice the pull, and so has what it hangs by', { chain: 'snatch -> bow-22 -> trunk -> larch\n  with bow-winch', trunk: 'wll 39 kN', larch: 'holding 41 kN', more: '\nblock snatch {\n  wll 39 kN\n}\n' }, [
      'error[link-above-limit]: load on `snatch` is up to 40 kN, above its working limit of 39 kN, because both parts of the line pull at the block',
      'error[link-above-limit]: load on `trunk` is up to 40 kN, above its working limit of 39 kN, because both parts of the line pull at the block',
    ]],
    // Statics: the end of the line and the two parts at the block, 3 times 20 kN.
    ['a tree that holds the block and the line\'s end has the pull of three parts', { chain: 'main outboard -> bow-22 -> larch\n  snatch -> trunk -> larch', trunk: 'wll 60 kN', larch: 'holding 59 kN', more: '\nblock snatch {\n  wll 60 kN\n}\n' }, ['error[link-above-limit]: load on `larch` is up to 60 kN, above its holding power of 59 kN, because 3 parts of the line pull at it']],
    ['two legs of one bridle to the same tree bring one pull', { chain: 'main outboard -> bow-22\n  bow-22 -> trunk -> larch\n  bow-22 -> bow-23 -> larch', larch: 'holding 20 kN' }, []],
    ['a block that hangs in the line has its pull once', { chain: 'main outboard -> snatch -> trunk -> larch', trunk: 'wll 20 kN', more: '\nblock snatch {\n  wll 20 kN\n}\n' }, []],
    ['a point by its rating', { chain: 'main outboard -> bow-22 -> plover bow', more: '\nvehicle plover {\n  mass 2,650 kg\n  point bow rated 2 t\n}\n' }, ['error[link-above-limit]: load on `plover bow` is 20 kN, above its working limit of 19.6 kN (2 t)']],
    ['a vehicle without a point', { chain: 'main outboard -> bow-22 -> plover', more: '\nvehicle plover {\n  mass 2,650 kg\n  point bow rated 2 t\n}\n' }, ['not judged: which recovery point of `plover` is used is not given']],
    ['a line without an end', { chain: 'main outboard -> bow-22 -> tail -> trunk -> larch' }, ['not judged: which end of `tail` is joined here is not given']],
  ];
  test.each(cases)('%s', (_what, parts, said) => {
    const text = rig(parts);
    const unknown = new Set(chainOf(text).notJudged.filter((n) => loads.includes(n.rule)).map((n) => `not judged: ${n.cause.says}`));
    expect([...about(text, ...loads), ...unknown].sort()).toEqual([...said].sort());
  });

  test('with less line out the winch pulls less', () => {
    const drum = 'rated 20 kN at layer 1\n  barrel 64 mm\n  width 230 mm\n  flange 165 mm\n  keep 10 wraps';
    const said = (out: string) => about(rig({ winch: drum, trunk: 'wll 17.5 kN', chain: `main outboard -> bow-22 -> trunk -> larch${out}` }), 'link-above-limit');
    expect(said('')).toHaveLength(1);
    expect(said('\n  out 27 m')).toHaveLength(1);
    expect(said('\n  out 5 m')).toEqual([]);
  });
});

describe('what may be weaker than its figures is not judged to hold', () => {
  const counted = (parts: Parts): { made: number; notJudged: string[] } => {
    const { made, notJudged } = chainOf(rig(parts));
    return { made, notJudged: notJudged.filter((n) => n.rule.startsWith('link-above')).map((n) => `${n.rule}: ${n.cause.key}`) };
  };
  test('all is judged to begin with', () => {
    expect(counted({}).notJudged).toEqual([]);
    expect(counted({}).made).toBeGreaterThan(10);
  });
  test.each([
    ['damaged', { trunk: 'wll 4 t\n  damage stitching' }, ['link-above-limit: damage of trunk']],
    ['retired', { tail: 'breaking 92 kN\n  2026-06-01 retired tail' }, ['link-above-breaking: retired tail', 'link-above-breaking: retired tail', 'link-above-factor: retired tail', 'link-above-factor: retired tail']],
    ['a logbook that cannot be read', { tail: 'breaking 92 kN\n  2026-06-01 damge cut 2 strands at 3 m from inboard' }, ['link-above-breaking: logbook of tail', 'link-above-breaking: logbook of tail', 'link-above-factor: logbook of tail', 'link-above-factor: logbook of tail']],
    ['rope on rope', { chain: 'tail inboard -> trunk -> bow-22 -> larch\n  with bow-winch', trunk: 'wll 4 t' }, ['link-above-breaking: eye on eye `tail` inboard eye `trunk`', 'link-above-factor: eye on eye `tail` inboard eye `trunk`', 'link-above-limit: eye on eye `tail` inboard eye `trunk`']],
    ['a shackle loaded from more than 90 degrees', { bow: 'form bow\n  body 22 mm\n  wll 6.5 t\n  load-from 91 deg' }, ['link-above-limit: side load of bow-22']],
    ['a size that the table does not list', { bow: 'body 16 mm\n  made-to AS-2741' }, ['link-above-limit: table row of bow-22']],
  ] as const)('%s', (_what, parts, causes) => {
    expect(counted(parts).notJudged.sort()).toEqual([...causes].sort());
    // Each has a finding of its own, so nothing is said about a missing fact.
    expect(about(rig(parts), 'missing-fact').filter((m) => /damage|retired|logbook|eye on eye|bow-22|trunk/.test(m))).toEqual([]);
  });
});

describe('rope on rope', () => {
  const meets = (chain: string, more = ''): string[] => about(rig({ chain, more }), 'rope-on-rope');
  const soft = '\nsoft-shackle loop {\n  diameter 11 mm\n  wll 30 kN\n}\n\nsoft-shackle loop-2 {\n  diameter 11 mm\n  wll 30 kN\n}\n';
  test.each([
    ['eye with a thimble on a bare eye', 'main outboard -> tail inboard', []],
    ['bare eye on a strap', 'tail inboard -> trunk', ['warning[rope-on-rope]: `tail` inboard eye bears on `trunk`, rope on rope']],
    ['bare eye in a soft shackle', 'tail inboard -> loop', ['warning[rope-on-rope]: `tail` inboard eye bears on `loop`, rope on rope']],
    ['soft shackle in a soft shackle', 'loop -> loop-2', ['warning[rope-on-rope]: `loop` bears on `loop-2`, rope on rope']],
    ['soft shackle in the eye of a strap', 'loop -> trunk', []],
    ['strap on steel', 'trunk -> bow-22', []],
    ['along a piece', 'bow-22 -> tail inboard -> tail outboard -> bow-23', []],
  ])('%s', (_what, chain, said) => {
    expect(meets(chain, soft)).toEqual(said);
  });

  test('the offered shackle goes between them, and then nothing is found', () => {
    const text = rig({ chain: 'tail inboard -> trunk -> larch\n  with bow-winch' });
    const after = fixed(text, 'rope-on-rope', 'Put `bow-22` between them');
    expect(after).toContain('tail inboard -> bow-22 -> trunk -> larch');
    expect(about(after, 'rope-on-rope')).toEqual([]);
  });

  test('a shackle that would not hold is not offered', () => {
    const text = rig({ chain: 'tail inboard -> trunk -> larch\n  with bow-winch', bow: 'body 22 mm\n  wll 1 t' });
    const offered = findingsIn(text).find((f) => f.code === 'rope-on-rope')!.finding.fixes.map((f) => f.title);
    expect(offered).toEqual(['Put `bow-23` between them']);
  });
});

describe('names', () => {
  const aboutNames = (text: string) => about(text, 'unknown-name', 'name-of-another-kind', 'name-declared-twice', 'unknown-rule', 'unused-allowance');
  test.each([
    ['a point that the vehicle does not have', 'chain c {\n  a -> v stern\n}\nanchor a {\n  kind tree\n}\nvehicle v {\n  mass 1 t\n  point bow rated 2 t\n}\n', ['error[unknown-name]: `v` has no recovery point `stern`']],
    ['an end that a line does not have', 'chain c {\n  l middle -> a\n}\nline l {\n  length 3 m\n}\nanchor a {\n  kind tree\n}\n', ['error[unknown-name]: `middle` is not an end of a line']],
    ['an end of gear', 'chain c {\n  s outboard -> a\n}\nshackle s {\n  wll 1 t\n}\nanchor a {\n  kind tree\n}\n', ['error[unknown-name]: `s` is a shackle and has no end or point named `outboard`']],
    ['a winch as a link', 'chain c {\n  w -> a\n}\nwinch w {\n  rated 3 kN\n}\nanchor a {\n  kind tree\n}\n', ['error[name-of-another-kind]: `w` is a winch; a line, a piece, a shackle, a soft-shackle, a strap, a block, a ring, a hook, an anchor, a vehicle or a thimble is meant here']],
    ['a repair in the head of a chain', 'chain c after r {\n  a -> a2\n}\nanchor a {\n  kind tree\n}\nanchor a2 {\n  kind tree\n}\n', ['error[unknown-name]: `r` is not known here']],
    ['two repairs may keep the same piece of one line', 'line l {\n  length 30 m\n}\nrepair one on l {\n  cut at 9 m from inboard keep tail\n}\nrepair two on l {\n  cut at 8 m from inboard keep tail\n}\n', []],
    ['pieces of two lines may not', 'line l {\n  length 30 m\n  2026-01-01 cut at 9 m from inboard keep tail\n}\nline m {\n  length 30 m\n  2026-01-01 cut at 9 m from inboard keep tail\n}\n', ['error[name-declared-twice]: `tail` is a piece already']],
    ['a piece and a shackle', 'shackle tail {\n  wll 1 t\n}\nline m {\n  length 30 m\n  2026-01-01 cut at 9 m from inboard keep tail\n}\n', ['error[name-declared-twice]: `tail` is a shackle already']],
    ['two points of a vehicle', 'vehicle v {\n  mass 1 t\n  point bow rated 2 t\n  point bow rated 3 t\n}\n', ['error[name-declared-twice]: `v` has a point `bow` already']],
    ['an allowance of a rule that does not exist', 'strap s {\n  wll 1 t  # allow rope-on-ropes: no reason\n}\n', ['warning[unknown-rule]: no rule is named `rope-on-ropes`']],
  ])('%s', (_what, text, said) => {
    expect(aboutNames(text)).toEqual(said);
  });

  test('the offered name takes the place of the wrong one', () => {
    expect(fixed('strap s {\n  wll 1 t  # allow rope-on-ropes: no reason\n}\n', 'unknown-rule', 'Write `rope-on-rope`')).toBe('strap s {\n  wll 1 t  # allow rope-on-rope: no reason\n}\n');
    const misspelt = (end: string) => findingsIn(`chain c {\n  l ${end} -> t -> a\n}\nline l {\n  length 3 m\n}\nstrap t {\n  wll 1 t\n}\nanchor a {\n  kind tree\n}\n`).filter((f) => f.line === 2).map(({ code, finding: { help, fixes } }) => [code, help, ...fixes.map((f) => [f.title, f.edits.map((e) => e.text), f.mechanical === true])]);
    // What hangs on the end says nothing of its own.
    expect(misspelt('outbord')).toEqual([['unknown-name', 'did you mean `outboard`?', ['Write `outboard`', ['outboard'], true]]]);
    // It is near `outboard` too, and which end is meant is a claim.
    expect(misspelt('onboard')).toEqual([['unknown-name', 'did you mean `inboard`?', ['Write `inboard`', ['inboard'], false]]]);
    expect(misspelt('middle')).toEqual([['unknown-name', 'write `inboard` or `outboard`']]);
    const point = 'chain c {\n  a -> v stren\n}\nanchor a {\n  kind tree\n}\nvehicle v {\n  mass 1 t\n  point bow rated 2 t\n  point stern rated 1 t\n}\n';
    expect(fixed(point, 'unknown-name', 'Write `stern`')).toBe(point.replace('stren', 'stern'));
    expect(findingsIn(point.replace('stren', 'hook')).find((f) => f.code === 'unknown-name')!.finding).toMatchObject({ help: 'its points are `bow`, `stern`', fixes: [] });
    expect(fixed('chain c {\n  bwo -> larch\n}\nshackle bow {\n  wll 1 t\n}\nanchor larch {\n  kind tree\n}\n', 'unknown-name', 'Write `bow`')).toContain('  bow -> larch\n');
  });
});

describe('ratings', () => {
  test.each([
    ['line l {\n  breaking 40 kN\n  working 90 kN\n}\n', '`l`', '90 kN', '40 kN'],
    ['strap s {\n  breaking 4 t\n  wll 4 t\n}\n', '`s`', '4 t', '4 t'],
    ['vehicle v {\n  mass 1 t\n  point bow rated 9 t breaking 3 t\n}\n', 'point `bow`', '9 t', '3 t'],
  ])('mixed up in %s', (text, what, working, breaking) => {
    expect(about(text, 'rating-mixed-up')).toEqual([`error[rating-mixed-up]: working limit of ${what} is ${working}, not below its breaking strength of ${breaking}`]);
    if (working !== breaking) expect(about(fixed(text, 'rating-mixed-up', 'Swap the two figures'), 'rating-mixed-up')).toEqual([]);
  });

  const bow19 = (more: string): string => `shackle s {\n  form bow\n  body 19 mm\n  made-to AS-2741\n  ${more}\n}\n`;
  test.each([
    ['the table\'s own figure', 'wll 4.7 t', []],
    ['below the table', 'wll 4 t', []],
    ['above the table', 'wll 4.75 t', ['warning[rating-above-table]: working limit of `s` is 46.5 kN (4.75 t), above the 46 kN that AS 2741 grade S gives for its body']],
  ])('against the table: %s', (_what, more, said) => {
    expect(about(bow19(more), 'rating-above-table')).toEqual(said);
  });

  test.each([
    ['4.9 times', 'wll 1 t\n  breaking 4.9 t', 1],
    ['5 times', 'wll 1 t\n  breaking 5 t', 0],
    ['the same figure twice is another finding', 'wll 1 t\n  breaking 1 t', 0],
  ])('design factor of %s', (_what, more, found) => {
    expect(about(bow19(more), 'design-factor-low')).toHaveLength(found);
  });

  test('gear that says itself that nothing can be read on it is said once', () => {
    const found = findingsIn(rig({ bow: 'body 22 mm\n  marking none' })).filter((f) => f.message.includes('bow-22')).map((f) => f.code);
    expect(found).toEqual(['unrated-gear']);
  });

  test('a soft shackle by the line it is tied from takes the weakest knot that was tested', () => {
    expect(about('soft-shackle s {\n  diameter 11 mm\n  line-breaking 100 kN\n}\n', 'limit-assumed-from-breaking')).toEqual(['information[limit-assumed-from-breaking]: working limit of `s` is taken as 20 to 34 kN: the breaking strength of a soft shackle of this line, 100 to 170 kN, over 5']);
  });
});

describe('a practice block', () => {
  const severity = (level: string): string[] => about(rig({ trunk: 'wll 1 t', more: `\npractice {\n  severity link-above-limit ${level}\n}\n` }), 'link-above-limit', 'severity-cannot-be-lowered');
  test('cannot lower a finding that compares with a rating', () => {
    for (const level of ['off', 'hint', 'information', 'warning']) {
      expect(severity(level)).toEqual(['error[link-above-limit]: load on `trunk` is 20 kN, above its working limit of 9.8 kN (1 t)', 'error[severity-cannot-be-lowered]: `link-above-limit` compares with a rating and stays an error']);
    }
    expect(severity('error')).toHaveLength(1);
  });
  test('is offered to drop the line, and nothing is left of it', () => {
    const text = 'practice {\n  line-factor 2\n  severity link-above-limit off\n  near 72 d\n}\n';
    expect(fixed(text, 'severity-cannot-be-lowered', 'Remove the line')).toBe('practice {\n  line-factor 2\n  near 72 d\n}\n');
  });
  test('can raise and lower the others', () => {
    const raised = (level: string): string[] => about(rig({ chain: 'tail inboard -> trunk', more: `\npractice {\n  severity rope-on-rope ${level}\n}\n` }), 'rope-on-rope');
    expect(raised('error')).toEqual(['error[rope-on-rope]: `tail` inboard eye bears on `trunk`, rope on rope']);
    expect(raised('off')).toEqual([]);
  });
});

describe('what hangs on what', () => {
  const structure = ['chain-closes-on-itself', 'end-used-twice', 'joins-more-than-two', 'anchor-mid-route', 'chain-without-anchor', 'routes-not-joined', 'drum-end-in-chain', 'retired-piece-used', 'repair-outside-chain', 'weak-link-at-anchor', 'kinetic-in-winch-chain', 'bare-end-in-chain'];
  const ring = '\nring master {\n  wll 5 t\n}\n\nstrap left {\n  wll 4 t\n}\n\nstrap right {\n  wll 4 t\n}\n\nanchor rock {\n  kind rock\n  holding 40 kN\n}\n';
  test.each([
    ['two routes joined by a piece', {}, []],
    ['a bridle from a ring, its stem written twice', { chain: 'main outboard -> master -> left -> larch\n  main outboard -> master -> right -> rock', more: ring }, []],
    ['a bridle from a strap', { chain: 'main outboard -> trunk -> left -> larch\n  trunk -> right -> rock', more: ring }, ['joins-more-than-two: `trunk` joins `main outboard`, `left` and `right`']],
    ['the same shackle twice in a route', { chain: 'main outboard -> bow-22 -> trunk -> bow-22 -> larch' }, ['chain-closes-on-itself: this route comes back to `bow-22`']],
    ['both ends of a piece in a route', { chain: 'main outboard -> bow-22 -> tail inboard -> tail outboard -> bow-23 -> larch' }, []],
    ['routes that only share an anchor', { chain: 'main outboard -> bow-22 -> larch\n  trunk -> larch' }, []],
    ['routes that share nothing', { chain: 'main outboard -> bow-22 -> larch\n  trunk -> rock', more: ring }, ['routes-not-joined: nothing joins this route to the first one of `reach`']],
    ['a route joined by a later one', { chain: 'main outboard -> bow-22 -> tail inboard\n  trunk -> larch\n  tail outboard -> bow-23 -> trunk' }, []],
    ['no anchor', { chain: 'main outboard -> bow-22 -> trunk' }, ['chain-without-anchor: what the far end of `reach` is made fast to is not given']],
    ['an unknown name may be the anchor', { chain: 'main outboard -> bow-22 -> oak' }, []],
    ['the drum end', { chain: 'main inboard -> bow-22 -> larch' }, ['drum-end-in-chain: the inboard end of `main` is on the drum of `bow-winch`']],
    ['a retired piece, said once', { tail: 'breaking 92 kN\n  2026-06-01 retired tail' }, ['retired-piece-used: `tail` was retired on 2026-06-01 and stands in `reach`']],
    ['retired only later', { tail: 'breaking 92 kN\n  2026-08-01 retired tail' }, []],
    ['a repair of another line', { chain: 'main outboard -> bow-22 -> larch', more: '\nrepair fix on tail {\n  reversed\n}\n' }, []],
    ['a bare end that a cut left', { tail: 'breaking 92 kN\n  2026-06-01 cut at 9 m from inboard' }, ['bare-end-in-chain: `tail outboard` is a bare end']],
    ['a kinetic strap', { trunk: 'kind kinetic\n  wll 4 t' }, ['kinetic-in-winch-chain: `trunk` is kinetic, and `bow-winch` loads it']],
    ['the weakest link at the anchor', { trunk: 'wll 21 kN\n  breaking 50 kN', chain: 'main outboard -> bow-22 -> trunk -> larch' }, ['weak-link-at-anchor: `trunk` at `larch` breaks first of all links of `reach`, at 50 kN']],
    ['the weakest link elsewhere', { trunk: 'wll 21 kN\n  breaking 150 kN', chain: 'main outboard -> bow-22 -> trunk -> larch' }, []],
    ['nothing about the weakest link while one is unknown', { trunk: 'wll 21 kN\n  breaking 50 kN', bow: 'body 22 mm', chain: 'main outboard -> bow-22 -> trunk -> larch' }, []],
  ] as const)('%s', (_what, parts, said) => {
    expect(findingsIn(rig(parts)).filter((f) => structure.includes(f.code)).map((f) => `${f.code}: ${f.message}`)).toEqual(said);
  });
});

describe('what fits what', () => {
  const fits = ['shackle-smaller-than-line', 'does-not-fit', 'strap-bunched', 'bend-over-small-pin', 'thimble-too-small', 'pin-thinner-than-body', 'pin-differs-from-table'];
  const van = '\nvehicle plover {\n  mass 2,650 kg\n  point bow rated 4.7 t opening 22 mm\n}\n';
  test.each([
    ['a shackle as thick as the line', { bow: 'body 10 mm\n  wll 3 t' }, ['shackle-smaller-than-line: body of `bow-22` is 10 mm, not above the 10 mm of `main`', 'bend-over-small-pin: `tail` inboard eye of 10 mm bends over 10 mm at `bow-22`: 1.0 times its diameter, below 2 times', 'shackle-smaller-than-line: body of `bow-22` is 10 mm, not above the 10 mm of `tail`']],
    ['a bare eye over twice its diameter', { bow: 'body 20 mm\n  wll 3 t' }, []],
    ['a bare eye over a pin thinner than the body', { bow: 'body 22 mm\n  pin 19 mm\n  wll 3 t' }, ['bend-over-small-pin: `tail` inboard eye of 10 mm bends over 19 mm at `bow-22`: 1.9 times its diameter, below 2 times', 'pin-thinner-than-body: pin of `bow-22` is 19 mm, thinner than its body of 22 mm']],
    ['a body as thick as the opening', { chain: 'main outboard -> bow-22 -> plover bow', more: van }, []],
    ['a body thicker than the opening', { chain: 'main outboard -> bow-22 -> plover bow', bow: 'body 25 mm\n  wll 6.5 t', more: van }, ['does-not-fit: body of `bow-22` is 25 mm, above the 22 mm opening of `plover bow`']],
    ['a strap as wide as the shackle', { chain: 'main outboard -> bow-22 -> trunk -> larch', bow: 'body 22 mm\n  inside 36 mm\n  wll 6.5 t', trunk: 'width 36 mm\n  wll 4 t' }, []],
    ['a strap wider than the shackle', { chain: 'main outboard -> bow-22 -> trunk -> larch', bow: 'body 22 mm\n  inside 36 mm\n  wll 6.5 t', trunk: 'width 60 mm\n  wll 4 t' }, ['strap-bunched: `trunk` is 60 mm wide and lies in 36 mm of `bow-22`: it bunches']],
  ] as const)('%s', (_what, parts, said) => {
    expect(findingsIn(rig(parts)).filter((f) => fits.includes(f.code)).map((f) => `${f.code}: ${f.message}`).sort()).toEqual([...said].sort());
  });
});
