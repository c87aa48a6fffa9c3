import { describe, expect, test } from 'vitest';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { findingsIn } from '../support/judge-text.ts';

// Where a file says two things, the milder one does not count without a word.

const said = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.severity}: ${f.message}`);

describe('one statement that says two things', () => {
  test.each([
    ['dragging', 'none 2 wheels of 4', 'error: `dragging` says both how much turns and which wheels do not'],
    ['grade', 'level 12 deg', 'error: `grade` says both that the way is level and that it is steep'],
  ])('%s', (head, values, message) => {
    const text = pullExample({ pull: pullWith({ [head]: `${head}  ${values}` }) });
    expect(said(text, 'says-two-things')).toEqual([message]);
    // Neither of the two counts: what is needed is not known, and so not within anything.
    expect(findingsIn(text).some((f) => f.code === 'winch-too-weak-for-pull')).toBe(false);
  });

  test.each(['', '\nrepair fix on main {\n  cut  at 1.6 m from inboard keep rest drop inboard\n}\n'])('a cut that names the part that keeps the name of the line', (plan) => {
    const entry = plan === '' ? '  2026-06-21 cut at 1.6 m from inboard keep rest drop inboard\n' : '';
    const text = `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n${entry}}\n${plan}`;
    expect(said(text, 'says-two-things')).toEqual(['error: `cut` says both that the outboard piece goes on under the name of the line and that it has another one']);
  });
});

describe('the reach of a pull', () => {
  const apart = (ahead: string): string[] => said(pullExample({ pull: pullWith({ stands: `stands    larch ahead ${ahead}` }) }), 'reach-unlike-plan');
  test.each([
    ['19 m', 0],
    ['23.3 m', 0],
    ['18.8 m', 1],
    ['23.4 m', 1],
  ])('21 m, and the anchor %s ahead', (ahead, times) => expect(apart(ahead)).toHaveLength(times));

  test('more line out than the chain is judged with is told, less is not', () => {
    const out = (length: string): string[] => said(pullExample({ chain: `chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n  out  ${length}\n}\n` }), 'out-below-reach');
    expect(out('2 m')).toEqual(['warning: `to-the-larch` is judged with 2 m of line out, and `off-the-ford` takes 18 to 21 m']);
    expect(out('18 m')).toEqual([]);
    expect(out('25 m')).toEqual([]);
  });
});

describe('figures of practice', () => {
  const practice = (...lines: string[]): string => `practice {\n${lines.map((l) => `  ${l}\n`).join('')}}\n`;
  const codes = ['practice-given-twice', 'practice-without-source', 'practice-beyond-published'];
  test.each([
    ['as careful as the built-in one', ['line-factor 3'], []],
    ['more careful', ['line-factor 4', 'cut-strands-limit 1 strand', 'heat-limit HMPE 60 degC', 'inspection-interval 3 months'], []],
    ['milder, with its source', ['line-factor 2 "crew rule 4"', 'bury HMPE 63 d "maker\'s sheet"'], []],
    ['milder, on the word of nobody', ['line-factor 2'], ['warning: `line-factor` is 2, milder than the 3 built in, and does not say where it comes from']],
    ['a limit that is higher is milder', ['abrasion-retire 30 %'], ['warning: `abrasion-retire` is 30 %, milder than the 25 % built in, and does not say where it comes from']],
    ['a time that is longer is milder', ['temporary-life 60 days'], ['warning: `temporary-life` is 60 days, milder than the 30 days built in, and does not say where it comes from']],
    // 29 CFR 1910.179(h)(2)(iii)(a): not less than 2 wraps.
    ['fewer wraps than any rule leaves', ['keep-wraps HMPE 1 wrap "it held"'], ['error: `keep-wraps HMPE` is 1, below the 2 beyond which no figure is taken; the built-in one counts']],
    // NAVEDTRA 14160: loaded over 75 % of break, line is damaged for good; 1 over 0.75 is 1.33.
    ['a factor at which line is damaged', ['line-factor 1.3 "it held"'], ['error: `line-factor` is 1.3, below the 1.34 beyond which no figure is taken; the built-in one counts']],
    // HMPE melts at 144 to 152 °C (handbook overview of the fibre).
    ['heat at which the fibre melts', ['heat-limit HMPE 145 degC "it held"'], ['error: `heat-limit HMPE` is 145 degC, above the 144 degC beyond which no figure is taken; the built-in one counts']],
    // Maker's tuck-bury instruction: a tail of 31.5 d is the shortest that is published for HMPE.
    ['a bury shorter than any published one', ['bury HMPE 31 d "it held"'], ['error: `bury HMPE` is 31 d, below the 31.5 d beyond which no figure is taken; the built-in one counts']],
    ['the shortest bury that is published', ['bury HMPE 31.5 d "tuck-bury, maker\'s sheet"'], []],
    // NAVEDTRA 14160 again, and sailing-press tests of knots in HMPE: 20 to 35 %.
    ['an overload that is none before the line breaks', ['overload-share 76 % "it held"'], ['error: `overload-share` is 76 %, above the 75 % beyond which no figure is taken; the built-in one counts']],
    ['a knot that keeps more than any that was tested', ['knot-strength HMPE 36 % "it held"'], ['error: `knot-strength HMPE` is 36 %, above the 35 % beyond which no figure is taken; the built-in one counts']],
    ['strands that take up load again in no length', ['near 1 d "it held"'], ['error: `near` is 1 d, below the 24 d beyond which no figure is taken; the built-in one counts']],
    ['gear without a factor', ['design-factor shackle 1.1 "it held"'], ['error: `design-factor shackle` is 1.1, below the 2 beyond which no figure is taken; the built-in one counts']],
    ['an inspection once in a hundred years', ['inspection-interval 100 years "it held"'], ['error: `inspection-interval` is 36,525 days, above the 730 days beyond which no figure is taken; the built-in one counts']],
    ['twice in one block', ['line-factor 3', 'line-factor 2 "b"'], ['error: `line-factor` stands twice in this `practice`']],
    ['for two materials', ['bury HMPE 72 d', 'bury nylon 24 d'], []],
  ])('%s', (_what, lines, expected) => {
    expect(said(practice(...lines), ...codes)).toEqual(expected);
  });

  test('one that another practice gives otherwise is told, and is no fault', () => {
    const told = 'information: `line-factor` replaces the figure of another `practice`';
    expect(said(practice('line-factor 3') + practice('line-factor 2 "b"'), ...codes)).toEqual([told]);
    expect(said(practice('line-factor 3') + practice('line-factor 3'), ...codes)).toEqual([]);
  });
});

describe('figures that cannot be', () => {
  const line = (material: string, breaking: string, diameter = '10 mm'): string[] => said(`line main {\n  material ${material}\n  diameter ${diameter}\n  length 30 m\n  breaking ${breaking}\n}\n`, 'stronger-than-its-fibre');
  // Aramid fibre maker's data, table 3: HMPE 290 kgf/mm², polyester 115; 1.4 times that over π d²/4.
  test.each([
    ['HMPE', '92 kN', 0],
    ['HMPE', '312 kN', 0],
    ['HMPE', '313 kN', 1],
    ['polyester', '124 kN', 0],
    ['polyester', '125 kN', 1],
    ['polypropylene', '900 kN', 0],
  ])('%s of 10 mm that breaks at %s', (material, breaking, times) => expect(line(material, breaking)).toHaveLength(times));

  // The same rod, 3 mm thick: HMPE 28.14 kN, aramid 33.68 kN; a button knot keeps at most 230 % (tests of soft shackles); the factor of 5 is CI 1401-15's.
  const above = (limit: string, of = 'the strongest that is made of '): string => `above the ${limit} of ${of}a solid rod of its fibre, 3 mm thick`;
  test.each([
    ['material HMPE\n  wll 12.9 kN', []],
    ['material HMPE\n  wll 13 kN', [`warning: \`loop\` is said to carry 13 kN, ${above('12.9 kN that a factor of 5 leaves')}`]],
    ['material HMPE\n  wll 64.8 kN', [`error: \`loop\` is said to carry 64.8 kN, ${above('12.9 kN that a factor of 5 leaves')}`]],
    ['material HMPE\n  breaking 64.7 kN', []],
    ['material HMPE\n  breaking 64.8 kN', [`error: \`loop\` is said to break at 64.8 kN, ${above('64.7 kN')}`]],
    ['material HMPE\n  line-breaking 28.2 kN', [`error: the line of \`loop\` is said to break at 28.2 kN, ${above('28.1 kN', '')}`]],
    ['breaking 77.4 kN', []],
    ['breaking 77.5 kN', [`error: \`loop\` is said to break at 77.5 kN, ${above('77.4 kN')}`]],
  ])('a soft shackle of 3 mm: %j', (statements, expected) => expect(said(`soft-shackle loop {\n  diameter 3 mm\n  ${statements}\n}\n`, 'stronger-than-its-fibre')).toEqual(expected));

  // US Army and Navy manuals: a plain sheave loses 10 %. A ring does not turn.
  test.each([
    ['efficiency 10 %', ['warning: `b` leaves 10 % of the tension, below the 90 % of a plain sheave']],
    ['efficiency 89.9 %', ['warning: `b` leaves 89.9 % of the tension, below the 90 % of a plain sheave']],
    ['efficiency 90 %', []],
    ['efficiency 101 %', ['error: `efficiency` is 101 %; it must be at most 100 %']],
    ['bearing ring\n  efficiency 50 %', []],
  ])('a block with %j', (statements, expected) => expect(said(`block b {\n  ${statements}\n}\n`, 'loss-above-published', 'value-out-of-range')).toEqual(expected));

  // Our own careful choice: 40 d, the most that an eye is taken to have, of the thickest line that can be written, 100 mm.
  test.each([['4 m', 0], ['4.1 m', 1], ['10 m', 1]])('an eye of %s', (size, times) => expect(said(`line main {\n  diameter 10 mm\n  outboard eye size ${size}\n}\n`, 'value-out-of-range')).toHaveLength(times));

  test('a shackle far above its size', () => {
    const shackle = (body: string, wll: string): string[] => said(`shackle s {\n  body ${body}\n  wll ${wll}\n}\n`, 'rating-beyond-size');
    // AS 2741: 6 mm carries 0.5 t, the most for its size in the table.
    expect(shackle('6 mm', '1 t')).toEqual([]);
    expect(shackle('6 mm', '1.01 t')).toHaveLength(1);
    expect(shackle('6 mm', '65 t')).toEqual(['warning: working limit of `s` is 637 kN (65 t), far above what a shackle of 6 mm carries']);
    expect(shackle('19 mm', '8.5 t')).toEqual([]);
  });

  // Master links of EN 1677-4, grade 80, in a lifting hardware catalogue: 26,000 lb on 0.98 in, 186.7 N/mm² of the squared body; 16 mm, twice: 95.57 kN.
  // Sling webbing of class 7, from memory: 9,800 lbf an inch, four plies over 5 are 1,373 N/mm; 75 mm, twice: 205.9 kN; HMPE is 290/115 as strong (fibre maker's table 3): 519.3 kN.
  // Both twice by our own careful choice.
  test.each([
    ['ring', 'body 16 mm\n  wll 95.5 kN', []],
    ['ring', 'body 16 mm\n  wll 95.7 kN', ['warning: working limit of `it` is 95.7 kN, far above what a ring of 16 mm carries']],
    ['ring', 'body 16 mm\n  breaking 480 kN', ['warning: working limit of `it` is 96 kN, far above what a ring of 16 mm carries']],
    ['hook', 'body 16 mm\n  wll 95.7 kN', ['warning: working limit of `it` is 95.7 kN, far above what a hook of 16 mm carries']],
    ['ring', 'wll 960 kN', []],
    ['strap', 'width 75 mm\n  wll 205 kN', []],
    ['strap', 'width 75 mm\n  wll 207 kN', ['warning: working limit of `it` is 207 kN, far above what a strap of 75 mm carries']],
    ['strap', 'width 75 mm\n  material HMPE\n  wll 519 kN', []],
    ['strap', 'width 75 mm\n  material HMPE\n  wll 520 kN', ['warning: working limit of `it` is 520 kN, far above what a strap of 75 mm carries']],
    ['shackle', 'body 6 mm\n  breaking 5.1 t', ['warning: working limit of `it` is 10 kN, far above what a shackle of 6 mm carries']],
  ])('a %s with %j', (head, statements, expected) => expect(said(`${head} it {\n  ${statements}\n}\n`, 'rating-beyond-size')).toEqual(expected));
});

describe('a logbook entry whose day is not written, or lies ahead', () => {
  const line = (entry: string) => findingsIn(`winch w {\n  rated 20 kN\n  carries main\n}\nline main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  outboard eye thimble tube bury 72 d taper 24 d size 160 mm\n  2026-05-02 fitted\n  ${entry}\n}\n`);
  test('what it says is of the line, so the line is in doubt', () => {
    const undated = line('damage cut 5 strands at 12 m from inboard');
    expect(undated.map((f) => f.code)).toContain('missing-date');
    const misspelt = line('repaired');
    expect(misspelt.find((f) => f.code === 'unknown-statement')!.finding.help).toBe('write what was done, with its date: `cut` and `splice`, or `mended`');
    expect(line('damge cut 5 strands at 12 m from inboard').find((f) => f.code === 'unknown-statement')!.finding.help).toMatch(/^did you mean `damage`, with its date\?/);
    expect(line('2026-06-01 repaired').find((f) => f.code === 'unknown-statement')!.finding).toMatchObject({ help: 'write what was done: `cut` and `splice`, or `mended`', fixes: [] });
  });
  test('damage of a later day is warned of, as it would count', () => {
    expect(line('2027-06-02 damage cut 5 strands at 12 m from inboard').filter((f) => f.code === 'entry-not-yet').map((f) => f.severity)).toEqual(['warning']);
    expect(line('2027-06-02 washed').filter((f) => f.code === 'entry-not-yet').map((f) => f.severity)).toEqual(['information']);
  });
});

describe('what would be lost or left out without a word', () => {
  const repair = (cuts: string): string[] => said(`line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  outboard eye thimble tube bury 72 d taper 24 d size 160 mm\n  2026-05-02 fitted\n  2026-06-20 damage cut 3 strands at 2 m from inboard\n}\nrepair fix on main {\n${cuts}}\n`, 'longer-piece-dropped');
  test('a cut at the drum end drops the good part', () => {
    expect(repair('  cut at 3 m from inboard\n')).toEqual(['warning: `fix` drops 27 m of the 30 m of `main`, more than it leaves']);
    expect(repair('  cut at 3 m from inboard keep tail\n')).toEqual([]);
    expect(repair('  cut at 27 m from inboard\n')).toEqual([]);
    expect(repair('  cut at 3 m from inboard drop inboard\n')).toEqual([]);
    expect(repair('  cut at 27 m from inboard drop inboard\n')).toEqual(['warning: `fix` drops 27 m of the 30 m of `main`, more than it leaves']);
  });

  const spare = 'line spare {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 8 m\n  breaking 140 kN\n  inboard eye thimble tube bury 72 d taper 24 d size 160 mm\n  outboard eye thimble tube bury 72 d taper 24 d size 160 mm\n}\n';
  test('a pull whose chain has a line, and not the one on its winch', () => {
    const chain = (routes: string): string[] => said(pullExample({ chain: `chain to-the-larch {\n  ${routes}\n}\n`, more: spare }), 'line-not-on-winch');
    expect(chain('spare outboard -> bow-22 -> trunk -> larch')).toEqual(['error: `off-the-ford` pulls with `bow-winch`, which carries `main`, and `to-the-larch` begins with `spare`']);
    expect(chain('main outboard -> bow-22 -> spare inboard\n  spare outboard -> trunk -> larch')).toEqual([]);
    // Gear alone hangs on the line of the winch.
    expect(chain('bow-22 -> trunk -> larch')).toEqual([]);
  });

  test('one shackle in two places of one chain, by way of an extension', () => {
    const text = pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> spare inboard\n  spare outboard -> bow-22 -> trunk -> larch\n}\n', more: spare });
    expect(said(text, 'chain-closes-on-itself')).toEqual(['error: `to-the-larch` comes back to `bow-22`']);
  });

  test('a stretch that was mended in part', () => {
    const log = (mended: string): string[] => said(`line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  2026-05-02 fitted\n  2026-06-20 damage glaze soft from 10 m to 12 m from inboard\n  2026-06-21 mended glaze ${mended} from inboard\n}\n`, 'mended-nothing');
    expect(log('at 11 m')).toEqual(['error: the soft glaze here goes on beyond the place that was mended on `main`']);
    expect(log('at 14 m')).toEqual(['error: no soft glaze is written at this place of `main`']);
    expect(log('from 10 m to 12 m')).toEqual([]);
  });
});

describe('what a later reader found that still passed', () => {
  const weak = (practice: string): string => `${practice}${pullExample({ line: 'line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  50 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n}\n' })}`;
  test('a figure that is not taken is not used', () => {
    const without = said(weak(''), 'line-factor-too-low', 'line-overloaded-by-pull');
    expect(without.length).toBeGreaterThan(0);
    expect(said(weak('practice {\n  line-factor 1.01 "me"\n}\n'), 'line-factor-too-low', 'line-overloaded-by-pull')).toEqual(without);
  });

  test('a vehicle that stands in two ways', () => {
    const twice = (a: string, b: string): string => pullExample({ pull: pullWith({ footing: `footing   plover ${a}\n  footing   plover ${b}` }) });
    expect(said(twice('level', 'on-slope'), 'says-two-things')).toEqual(['error: `footing` says two things of `plover`']);
    expect(said(twice('level', 'level'), 'says-two-things')).toEqual([]);
  });

  test('wear that is heavy in words and slight in figures is cut out', () => {
    const worn = (damage: string): string[] => said(`line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  outboard eye thimble tube bury 72 d taper 24 d\n  2026-05-02 fitted\n  2026-06-01 damage ${damage} at 8 m from inboard\n}\n`, 'says-two-things', 'damage-left-in-service').map((m) => m.split(':')[1]!.trim().split(' ')[0]!);
    expect(worn('abrasion 5 % heavy')).toHaveLength(2);
    expect(worn('abrasion 30 % moderate')).toHaveLength(2);
    expect(worn('abrasion 30 % heavy')).toHaveLength(1);
    expect(worn('abrasion 5 % light')).toHaveLength(0);
  });

  test('one shackle on two things', () => {
    const more = 'block snatch {\n  sheave      110 mm\n  takes       12 mm\n  wll         20 t\n  efficiency  95 %\n}\nanchor rock {\n  kind     rock\n  holding  200 kN "tested 2026-05-02"\n}\n';
    const pull = pullWith({ resistance: 'resistance  12 kN "load cell"', via: 'via       snatch fixed angle 90 deg after 12 m', reach: 'reach     12 m', people: 'people    60 m' });
    const chain = (holder: string): string => `chain to-the-larch {\n  main outboard -> bow-22 -> larch\n  snatch -> bow-22 -> ${holder}\n}\n`;
    expect(said(pullExample({ more, pull, chain: chain('rock') }), 'block-held-elsewhere')).toEqual(['error: `bow-22` hangs on `larch` and on `rock` at once']);
    expect(said(pullExample({ more, pull, chain: chain('larch') }), 'block-held-elsewhere')).toEqual([]);
  });
});
