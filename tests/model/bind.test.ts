import { describe, expect, test } from 'vitest';
import { bindChunk } from '../../src-core/model/bind-chunk.ts';
import type { BoundBlock, BoundChunk, BoundValue } from '../../src-core/model/bound.ts';
import { splitChunks } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

const bind = (text: string): BoundChunk[] => splitChunks(text, topHeads).map((c) => bindChunk(c.chunk));

/** `code: message | help`, with the marked words in front. */
function problemsOf(text: string): string[] {
  return bind(text).flatMap((c) => c.problems.map((p) => `«${c.chunk.text.slice(p.place.start, p.place.end)}» ${p.code}: ${p.message} | ${p.help}`));
}

/** A value without its place. */
function plain(value: BoundValue): unknown {
  switch (value.type) {
    case 'quantity':
      return [Number(value.value.toPrecision(12)), value.kind, value.unit.symbol, value.inDiameters === true ? 'in diameters' : '', value.mass ?? ''];
    case 'station':
      return [value.from.distance.value, value.from.end, value.to?.distance.value, value.to?.end];
    case 'route':
      return value.links.map((l) => (l.link === 'name' ? [l.name, l.part?.name] : [l.gear, l.form, Number(l.size.value.toPrecision(12)), l.standard]));
    default: {
      const { place: _place, type: _type, ...rest } = value;
      return Object.values(rest);
    }
  }
}

/** What a block says, statement by statement. */
const said = (block: BoundBlock): unknown[] => block.statements.filter((s) => s.broken.size === 0).map((s) => [s.definition.head, s.day, [...s.values].map(([key, value]) => [key, plain(value)])]);

const first = (text: string): BoundBlock => bind(text)[0]!.blocks[0]!;
const valueOf = (text: string, key: string): BoundValue | undefined => {
  for (const statement of first(text).statements) if (statement.values.has(key)) return statement.values.get(key);
  return undefined;
};

const line = (statement: string): string => `line main {
  material  HMPE
  diameter  10 mm
${statement === '' ? '' : `  ${statement}\n`}  breaking  92 kN
  2025-04-02  fitted
}

shackle bow-22 {
  wll  6.5 t
}
`;

describe('a broken line costs that line and nothing else', () => {
  const broken: readonly (readonly [statement: string, problem: string])[] = [
    ['length  30', '«30» bare-number: `length` is 30 without a unit | write a length, such as 30 m'],
    ['length  30 kg', '«30 kg» wrong-dimension: `length` takes a length, such as 30 m; 30 kg is a mass | write it like `30 m`'],
    ['length  30 m 6', '«6» unexpected-value: `6` has no meaning here in `length` | write it like `length 30 m`'],
    ['length  30 feets', '«feets» unknown-unit: `feets` is not a unit | did you mean `feet`?'],
    ['length  30 furlong', '«furlong» unknown-unit: `furlong` is not a unit | write a unit such as mm, cm, m, in or ft'],
    ['length  -3 m', '«-3 m» value-out-of-range: `length` is -3 m; it must be above zero | correct the number or its unit'],
    ['length  0 m', '«0 m» value-out-of-range: `length` is 0 m; it must be above zero | correct the number or its unit'],
    ['length  2001 m', '«2001 m» value-out-of-range: `length` is 2001 m; it must be at most 2,000 m | correct the number or its unit'],
    ['length  9 in 22 ft', '«9 in 22 ft» mixed-compound: a compound goes from the larger unit to the smaller one | write it like 22 ft 6 in'],
    ['length  22 ft 13 in', '«22 ft 13 in» mixed-compound: a compound goes from the larger unit to the smaller one | write it like 22 ft 6 in'],
    ['length', '«length» missing-value: `length` lacks a length, such as 30 m | write it like `30 m`'],
    ['length  thirty', '«thirty» unexpected-value: `thirty` has no meaning here in `length` | remove it, or put prose into "..."'],
    ['length  10000000000000000000000000000000000000000000 m', '«10000000000000000000000000000000000000000000» bad-number: this number cannot be read, or is too large to be meant | write an ordinary number, such as 9,500 or 3/8'],
    ['working  4 ton', '«ton» ambiguous-unit: `ton` can mean 1,000, 907 or 1,016 kg | write `t`, `short-ton` or `long-ton`'],
    ['working  4 m', '«4 m» wrong-dimension: `working` takes a load as a force or a mass, such as 18 kN; 4 m is a length | write it like `18 kN`'],
    ['strands  1000000000', '«1000000000» value-out-of-range: `strands` is 1000000000; a whole number from 3 to 48 is meant here | correct the number'],
    ['strands  11.5', '«11.5» value-out-of-range: `strands` is 11.5; a whole number from 3 to 48 is meant here | correct the number'],
    ['strands  12 %', '«12 %» wrong-dimension: `strands` takes a plain number of strands, not 12 % | write it like `3 strands`'],
    ['construction  hollow-brade', '«hollow-brade» unknown-word: `hollow-brade` is not a word that `construction` knows | did you mean `hollow-braid`? One of hollow-braid, double-braid, laid, wire-6x19'],
    ['stored  somewhere', '«somewhere» unknown-word: `somewhere` is not a word that `stored` knows | write one of outdoors, covered, indoors'],
    ['lenght  30 m', '«lenght» unknown-statement: `lenght` is not a statement of `line` | did you mean `length`?'],
    ['outboard  eye bury', '«bury» missing-value: `bury` in `outboard` lacks a length, or a number of diameters, such as 72 d | write something like `72 d` behind `bury`'],
    ['outboard  eye thimble', '«thimble» missing-value: `thimble` in `outboard` lacks one of tube, round, heart, sleeve | write something like `tube` behind `thimble`'],
    ['outboard  eye bury 72 d taper 24 d bury 3 d', '«bury 3 d» unexpected-value: `bury` stands twice in `outboard` | keep one of them; the first one is used'],
    ['outboard  eye locked locked', '«locked» unexpected-value: `locked` stands twice in `outboard` | keep one of them; the first one is used'],
    ['length  3/0 m', '«3/0» bad-number: this number cannot be read, or is too large to be meant | write an ordinary number, such as 9,500 or 3/8'],
    ['inspected', '«inspected» missing-date: `inspected` in a logbook begins with its date | write it like `2026-06-21  inspected  "outside in: fairlead scored on the lower lip"`'],
    ['21.6.2026  inspected', '«21.6.2026» bad-date: 21.6.2026 is not how a date is written here | write it year-month-day, 2026-06-21'],
    ['06-21-2026  inspected', '«06-21-2026» bad-date: 06-21-2026 is not how a date is written here | write it year-month-day, 2026-06-21'],
    ['2026–06–21  inspected', '«2026–06–21» bad-date: 2026–06–21 is not how a date is written here | write it year-month-day, 2026-06-21'],
    ['2026-06-21T10:00  inspected', '«2026-06-21T10:00» bad-date: 2026-06-21T10:00 is not how a date is written here | write it year-month-day, 2026-06-21'],
    ['12026-06-21  inspected', '«12026-06-21» bad-date: 12026-06-21 is not how a date is written here | write it year-month-day, such as 2026-06-21'],
    ['1899-06-21  inspected', '«1899-06-21» bad-date: 1899-06-21 is before 1900, when days begin here | write a date as year-month-day, such as 2026-06-21'],
    ['June 21, 2026  inspected', '«June 21, 2026» bad-date: June 21, 2026 is not how a date is written here | write it year-month-day, 2026-06-21'],
    ['6/7/2026  inspected', '«6/7/2026» bad-date: 6/7/2026 is not how a date is written here | write it year-month-day, such as 2026-06-21'],
    ['2026-06-21  inspected nothing found', '«nothing found» unexpected-value: `nothing found` is prose without quotes in `inspected` | put prose into "...": "nothing found"'],
    ['2026-06-21  washed in the stream', '«in the stream» unexpected-value: `in the stream` is prose without quotes in `washed` | put prose into "...": "in the stream"'],
    ['2026-06-21  pulled hard', '«2026-06-21  pulled hard» missing-value: `pulled` lacks a load as a force or a mass, such as 31 kN | write it like `31 kN`'],
    ['2026-06-21  damage cut 1 strand at 12 m from inboard from outboard', '«from outboard» unexpected-value: `from` stands twice in `damage` | keep one of them; the first one is used'],
    ['2026-06-21  damage light abrasion at 5 m from inboard', '«light» unknown-word: `light` stands before the kind in `damage` | the kind comes first: `damage abrasion light`'],
    ['2026-06-21  damage light at 5 m from inboard', '«light» unknown-word: `damage` lacks its kind before `light` | write one of cut, abrasion, glaze, melt, pulled, flattened, kink, stain, brittle before it'],
    ['2026-06-21  damage abrasion light heavy at 5 m from inboard', '«heavy at 5 m from inboard» unexpected-value: `heavy` stands beside `light` in `damage`, and one of them is meant | keep one of them; the first one is used'],
    ['2026-06-21  damage cut 1 strand at 12 m from inboard to', '«to» unexpected-value: `to` stands at a wrong place in `damage` | write it like `2026-06-21 damage cut 2 strands at 8.4 m from inboard`'],
    ['2026-06-21  damage abrasion 120 % at 3 m from inboard', '«120 %» value-out-of-range: the share in `damage` is 120 %; it must be at most 100 % | correct the number or its unit'],
    ['2026-06-21  damage cut 0 strands at 3 m from inboard', '«0 strands» value-out-of-range: the number of strands in `damage` is 0 strands; a whole number from 1 to 48 is meant here | correct the number'],
    ['2026-06-28  cut at -3 m from inboard', '«-3 m» value-out-of-range: `at` in `cut` is -3 m; it must not be below 0 m | correct the number or its unit'],
    ['outboard  eye bury 72', '«72» bare-number: `bury` in `outboard` is 72 without a unit | write a length, or a number of diameters, such as 72 d'],
    ['outboard  eye bury 72 diameters', '«diameters» unknown-unit: `diameters` is not a unit | did you mean `d`?'],
    ['length  6 -1/4 m', '«6 -1/4» bad-number: a fraction with a sign stands behind `6`: it may be added or taken away | write `6 1/4` for 6 and 1/4'],
    ['working  9.500 lbf', '«9.500 lbf» value-out-of-range: `working` is 9.500 lbf; it must not be below 113 lbf | a point begins decimals: for thousands write `9,500` or `9500`'],
    ['working  9.500 kg', '«9.500 kg» value-out-of-range: `working` is 9.500 kg; it must not be below 51 kg | a point begins decimals: for thousands write `9,500` or `9500`'],
    ['working  9.50 lbf', '«9.50 lbf» value-out-of-range: `working` is 9.50 lbf; it must not be below 113 lbf | correct the number or its unit'],
    ['working  20k lbf', '«k» unknown-unit: `k` is not a unit | write the thousands out: 20,000 lbf'],
    ['length  30,000 m', '«30,000 m» value-out-of-range: `length` is 30,000 m; it must be at most 2,000 m | a comma marks thousands: for decimals write `30.000`'],
    ['length  9 500 mm', '«9 500» bad-number: `length` is 9 500, two numbers with a space between | for thousands write `9,500` or `9500`'],
    ['length  4,7 m', '«,» stray-character: `,` means nothing here | write a decimal with a point: 4.7'],
    ['length  2½ in', '«½» stray-character: `½` means nothing here | write it as `2 1/2`'],
    ['length  2-1/2"', '«"» unclosed-quote: this text has no closing quote | write `in` for inches: 2-1/2 in'],
    ['2026-06-21  spooled hard and fast', '«hard» unknown-word: `hard` is not a word that `spooled` knows | write one of tight, slack'],
    ['length  30"', '«"» unclosed-quote: this text has no closing quote | write `in` for inches: 30 in'],
    ['2026-02-31  inspected', '«2026-02-31» bad-date: 2026-02-31 is not a day of the calendar | write a date as year-month-day, such as 2026-06-21'],
    ['2026-6-1  inspected', '«2026-6-1» bad-date: 2026-6-1 has a month or a day of one digit | write both with two digits: 2026-06-01'],
    ['2026-06-21', '«2026-06-21» missing-value: this entry says a date and nothing else | a logbook knows fitted, inspected, damage, cut, splice, join, mended, washed, reversed, pulled, heated, spooled, retired'],
    ['2026-06-21  inspcted', '«inspcted» unknown-statement: `inspcted` is not an entry of a logbook | did you mean `inspected`?'],
    ['2026-06-21  damage cut two strands at 8.4 m from inboard', '«two» unexpected-value: `two` is a number in words in `damage` | write `2`'],
    ['2026-06-21  damage cut 2 strands 8.4m from inboard', '«8.4m from inboard» unexpected-value: the position in `damage` lacks its `at` | a position begins with `at`, a stretch with `from`'],
    ['2026-06-21  damage cut 2 strands 27 ft 6 1/2 in from inboard', '«27 ft 6 1/2 in from inboard» unexpected-value: the position in `damage` lacks its `at` | a position begins with `at`, a stretch with `from`'],
    ['2026-06-21  damage abrasion 20 % 8.4 m from inboard', '«8.4 m from inboard» unexpected-value: the position in `damage` lacks its `at` | a position begins with `at`, a stretch with `from`'],
    ['2026-06-21  cut 9 m from inboard', '«9 m from inboard» unexpected-value: the position in `cut` lacks its `at` | a position begins with `at`, a stretch with `from`'],
    ['2026-06-21  damage chafe 20 % at 8.4 m from inboard', '«chafe» unknown-word: `chafe` is not a word that `damage` knows | did you mean `abrasion`? One of cut, abrasion, glaze, melt, pulled, flattened, kink, stain, brittle, ...'],
    ['2026-06-21  chafe at 8.4 m from inboard', '«chafe» unknown-statement: `chafe` is not an entry of a logbook | did you mean `damage`?'],
    ['mbl  92 kN', '«mbl» unknown-statement: `mbl` is not a statement of `line` | did you mean `breaking`?'],
    ['2026-06-21  cut at 8.4 m', '«at 8.4 m» missing-value: a position says its distance and from which end | write it like `at 8.4 m from inboard`'],
    ['2026-06-21  cut at 8.4 from inboard', '«8.4» bare-number: `at` in `cut` is 8.4 without a unit | write a length, such as 8.4 m'],
    ['2026-06-21  damage abrasion heavy from 7 m to from inboard', '«from 7 m to from» missing-value: a position says its distance and from which end | write it like `from 7.9 m to 9.1 m from inboard`'],
    ['2026-06-21  damage cut 2 strands', '«2026-06-21  damage cut 2 strands» missing-value: `damage` lacks a position, such as `at 8.4 m from inboard` | write it like `at 8.4 m from inboard`'],
    ['2026-06-21  pulled 31', '«31» bare-number: `pulled` is 31 without a unit | write a load as a force or a mass, such as 31 kN'],
    ['length = 30 m', '«=» stray-character: `=` means nothing here | a statement is its head and its values with spaces between, without an equals sign'],
    ['2026-06-21  inspected "outside in', '«"outside in» unclosed-quote: this text has no closing quote | add `"` at the end of the line'],
  ];

  const whole = said(first(line('')));

  test.each(broken)('%s', (statement, problem) => {
    expect(problemsOf(line(statement))).toEqual([problem]);
    const chunks = bind(line(statement));
    const rest = said(chunks[0]!.blocks[0]!);
    for (const fact of whole) expect(rest).toContainEqual(fact);
    expect(said(chunks[1]!.blocks[0]!)).toEqual([['wll', undefined, [['wll', [63743.225, 'working limit', 't', '', 6500]]]]]);
  });

  test('the harness sees a line that is whole', () => {
    expect(problemsOf(line('length  30 m'))).toEqual([]);
    expect(said(first(line('length  30 m')))).toHaveLength(whole.length + 1);
  });

  test('what the broken line would have said is remembered as broken, and not as missing', () => {
    expect([...first(line('lenght  30 m')).brokenHeads]).toEqual(['length']);
    expect([...first(line('2026-06-21  damge cut 2 strands at 8 m from inboard')).brokenHeads]).toEqual(['logbook']);
    expect([...first(line('length  30 kg')).statements.find((s) => s.definition.head === 'length')!.broken]).toEqual(['length']);
  });

  test('a number with a character in it is no value', () => {
    for (const written of ['2½ in', '6 - 1/4 in', '4,7 m', '9 500 mm']) expect(valueOf(line(`length  ${written}`), 'length')).toBeUndefined();
  });

  test('a statement that stands twice counts once, the first time', () => {
    expect(problemsOf(line('diameter  11 mm'))).toEqual(['«diameter  11 mm» repeated-statement: `diameter` stands twice in `main` | keep one of them; the first one is used']);
    expect(valueOf(line('diameter  11 mm'), 'diameter')).toMatchObject({ value: 0.01 });
  });
});

describe('a broken head costs its block and nothing else', () => {
  const second = '\nshackle bow-22 {\n  wll  6.5 t\n}\n';
  const heads: readonly (readonly [text: string, problems: readonly string[]])[] = [
    ['lien main {\n  length  30 m\n}\n', ['«lien» unknown-block: `lien` is not a block of the language | did you mean `line`?']],
    ['rope main {\n  length  30 m\n}\n', ['«rope» unknown-block: `rope` is not a block of the language | did you mean `line`?']],
    ['length  30 m\n', ['«length» unknown-block: `length` is not a block of the language | `length` belongs inside a block such as `line`']],
    ['{\n  length  30 m\n}\n', ['«{» unknown-block: this block has no head | write what it is and its name, such as `line main {`']],
    ['line main\n', ['«line main» missing-block: `line main` has no `{ ... }` | add `{`, its statements on lines of their own, and `}`']],
    ['line {\n  length  30 m\n}\n', ['«line» missing-value: `line` lacks a name | write it like `line main {`']],
    ['line main {\n  length  30 m\n', ['«{» unclosed-brace: `line main` is not closed | add `}` on a line of its own where the block ends']],
    ['line main "new {\n  length  30 m\n}\n', ['«"new» unclosed-quote: this text has no closing quote | add `"` at the end of the line']],
    ['line main {\n  length {\n  }\n}\n', ['«length» missing-value: `length` lacks a length, such as 30 m | write it like `30 m`', '«{» unexpected-block: a block stands where `line` takes a statement | close the block above first, or remove the brace']],
    ['shackle s {\n  2026-06-21  inspected\n}\n', ['«2026-06-21» unexpected-value: `shackle` keeps no logbook | dated entries belong into a `line`']],
    ['use practice.rig\n', ['«practice» missing-value: `use` lacks the path of a file in quotes | write it like `use "practice.rig"`', '«.» stray-character: `.` means nothing here | remove it, or put text into "..."']],
    ['use "a.rig" "b.rig"\n', ['«"b.rig"» unexpected-value: `use` takes one path and nothing else | put every file on a line of its own']],
    ['winch w\n{\n  rated  42 kN\n}\n', ['«{» brace-below-head: this `{` stands below the head of its block | write it at the end of the line above']],
    ['winch w  # in front\n\n# below\n{\n  rated  42 kN\n}\n', ['«{» brace-below-head: this `{` stands below the head of its block | write it at the end of the line above']],
    ['vehicle old truck {\n}\n', ['«truck» unexpected-value: the name in `vehicle` is several words | a name is one word, such as `old-truck`; put prose into "..."']],
    ['winch 1front {\n}\n', ['«1front» unexpected-value: `1front` cannot be the name of a `winch` | a name begins with a letter, such as `front-1`']],
    ['kit {\n}\n', ['«kit» missing-value: `kit` lacks a name | write it like `kit bag {`']],
    ['chain c {\n  a, b\n}\n', ['«a» unknown-statement: `a` is not a statement of `chain` | `chain` knows out, with, and routes whose links are joined with `->`', '«,» stray-character: `,` means nothing here | write values with spaces between; a comma belongs inside a number, such as 9,500']],
    ['chain c {\n  a - > b\n}\n', ['«- >» stray-character: `- >` is not an arrow | the arrow is `->`, without a space']],
    ['winch w {\n  rated  42 kN at layer 1 at layer 2\n}\n', ['«at layer 2» unexpected-value: `at` stands twice in `rated` | keep one of them; the first one is used']],
    ['vehicle v {\n  point  bow rated 4.7\n}\n', ['«4.7» bare-number: `rated` in `point` is 4.7 without a unit | write a load as a force or a mass, such as 4.7 t']],
    ['pull p with w {\n  grade  30\n}\n', ['«30» bare-number: `grade` is 30 without a unit | write an angle or a share, such as 12 deg or 20 %']],
    ['practice {\n  line-factor  2 foo\n}\n', ['«foo» unknown-unit: `foo` is not a unit | write the number alone']],
    ['chain c {\n  a -> \n}\n', ['«a ->» missing-value: this route ends with an arrow and no link | write it like `main outboard -> bow-22 -> larch`']],
    ['chain c {\n  -> a\n}\n', ['«->» unexpected-value: `->` stands where a link is meant | write a name, such as `main outboard`, or gear by size, such as `shackle bow 19 mm`']],
    ['chain c {\n  a b c -> d\n}\n', ['«c» unexpected-value: `c` stands where an arrow is meant | join links with `->`']],
  ];

  test.each(heads)('%s', (text, problems) => {
    expect(problemsOf(text + second)).toEqual(problems);
    const after = bind(text + second).flatMap((c) => c.blocks).at(-1)!;
    expect([after.definition.head, after.name, said(after)]).toEqual(['shackle', 'bow-22', [['wll', undefined, [['wll', [63743.225, 'working limit', 't', '', 6500]]]]]]);
  });
});

describe('quantities', () => {
  // Exact by definition (NIST SP 811, app. B): 1 in = 0.0254 m, 1 ft = 12 in, 1 lb = 0.45359237 kg, g = 9.80665 m/s².
  const lengths: readonly (readonly [written: string, metres: number, unit: string])[] = [
    ['30 m', 30, 'm'],
    ['0.5 m', 0.5, 'm'],
    ['.5 m', 0.5, 'm'],
    ['2 m 35 cm', 2.35, 'm'],
    ['1,200 mm', 1.2, 'mm'],
    ['98 ft', 98 * 0.3048, 'ft'],
    ['22 ft 6 in', 22.5 * 0.3048, 'ft'],
    ['3/8 in', 0.375 * 0.0254, 'in'],
    ['1 3/4 in', 1.75 * 0.0254, 'in'],
    ['6-1/4 in', 6.25 * 0.0254, 'in'],
    ['22 ft 6 1/2 in', 22 * 0.3048 + 6.5 * 0.0254, 'ft'],
    ['30m', 30, 'm'],
    ['10 inches', 0.254, 'in'],
  ];
  test.each(lengths)('%s', (written, metres, unit) => {
    const value = valueOf(line(`length  ${written}`), 'length');
    expect(value).toMatchObject({ type: 'quantity', unit: { symbol: unit } });
    expect((value as { value: number }).value).toBeCloseTo(metres, 12);
  });

  const loads: readonly (readonly [written: string, newtons: number, mass: number | undefined])[] = [
    ['18 kN', 18_000, undefined],
    ['9,500 lbf', 9500 * 0.45359237 * 9.80665, undefined],
    ['9,500 lb', 9500 * 0.45359237 * 9.80665, 9500 * 0.45359237],
    ['4.7 t', 4700 * 9.80665, 4700],
    ['3 1/4 short-tons', 6500 * 0.45359237 * 9.80665, 6500 * 0.45359237],
    ['500 kgf', 500 * 9.80665, undefined],
  ];
  // Least loads are limits of absurdity: a line of 500 N, gear of 250 N, a trailer of 50 kg are still read.
  test.each([
    ['winch w {\n  rated  500 N\n}\n', []],
    ['winch w {\n  rated  499 N\n}\n', ['`rated`']],
    [line('working  500 N'), []],
    ['line l {\n  breaking  499 N\n}\n', ['`breaking`']],
    ['shackle s {\n  wll  250 N\n  breaking  500 N\n}\n', []],
    ['strap s {\n  wll  249 N\n  breaking  499 N\n}\n', ['`wll`', '`breaking`']],
    ['vehicle v {\n  mass  50 kg\n  point  bow rated 250 N\n}\n', []],
    ['pull p with w {\n  load  2.650 kg\n  resistance  9.000 N\n}\n', ['`load`', '`resistance`']],
    ['pull p with w {\n  load  50 kg\n  resistance  100 N\n}\n', []],
    [line('2026-02-14  pulled 31.000 N'), ['`pulled`']],
    ['vehicle v {\n  mass  2.650 kg\n  point  bow rated 4.700 kg\n}\n', ['`mass`', '`rated`']],
  ])('least loads: %j', (text, refused) => expect(problemsOf(text).map((p) => /value-out-of-range: (`[a-z]+`)/.exec(p)?.[1])).toEqual(refused));

  test.each(loads)('%s as a load', (written, newtons, mass) => {
    const value = valueOf(line(`working  ${written}`), 'working') as { value: number; mass?: number };
    expect(value.value).toBeCloseTo(newtons, 6);
    if (mass === undefined) expect(value.mass).toBeUndefined();
    else expect(value.mass).toBeCloseTo(mass, 9);
  });

  test('diameters wait for their line', () => {
    expect(valueOf(line('outboard  eye bury 72 d taper 24 d'), 'bury')).toMatchObject({ value: 72, inDiameters: true });
    expect(valueOf(line('outboard  eye bury 3.5 fids'), 'bury')).toMatchObject({ value: 73.5, inDiameters: true });
    expect(problemsOf(line('outboard  eye bury 1001 d'))).toEqual(['«1001 d» value-out-of-range: `bury` in `outboard` is 1001 d; it must be at most 1,000 d | correct the number or its unit']);
  });

  test('a grade is an angle, or a share of it', () => {
    const grade = (written: string): number => (valueOf(`pull p with w {\n  grade  ${written}\n}\n`, 'grade') as { value: number }).value;
    expect(grade('45 deg')).toBeCloseTo(Math.PI / 4, 12);
    expect(grade('100 %')).toBeCloseTo(Math.PI / 4, 12);
    expect(grade('20 %')).toBeCloseTo(Math.atan(0.2), 12);
  });

  test('a mass is not taken for a force where a mass is meant, and the other way round where no load stands', () => {
    expect(problemsOf('vehicle v {\n  mass  26 kN\n}\n')).toEqual(['«26 kN» wrong-dimension: `mass` takes a mass, such as 2,650 kg; 26 kN is a force | write it like `2,650 kg`: a mass is meant here, not a force']);
  });
});

describe('dates', () => {
  const dayOf = (date: string): number | undefined => first(line(`${date}  inspected`)).statements.find((s) => s.definition.head === 'inspected')?.day;
  test.each([
    ['1970-01-01', 0],
    ['2000-02-29', 11_016],
    ['2024-02-29', 19_782],
    ['2026-06-21', 20_625],
  ])('%s', (date, day) => {
    expect(dayOf(date)).toBe(day);
    expect(new Date(day * 86_400_000).toISOString().slice(0, 10)).toBe(date);
  });
  test.each(['2025-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-06-00', '2026-04-31', '1899-12-31', '2026-1-01'])('%s is refused', (date) => {
    expect(dayOf(date)).toBeUndefined();
    expect(problemsOf(line(`${date}  inspected`))).toHaveLength(1);
  });
});

describe('values of other shapes', () => {
  test('a route with ends, gear by size and standards', () => {
    expect(plain(valueOf('chain c {\n  main outboard -> shackle bow 3/4 in RR-C-271 → soft-shackle 11 mm -> larch\n}\n', 'route')!)).toEqual([
      ['main', 'outboard'],
      ['shackle', 'bow', 0.01905, 'RR-C-271'],
      ['soft-shackle', undefined, 0.011, undefined],
      ['larch', undefined],
    ]);
  });

  test('positions, at one place and over a stretch', () => {
    expect(plain(valueOf(line('2026-06-21  damage cut 2 strands at 8.4 m from outboard'), 'station')!)).toEqual([8.4, 'outboard', undefined, undefined]);
    expect(plain(valueOf(line('2026-06-21  damage abrasion heavy from 7.9 m to 9.1 m from inboard'), 'station')!)).toEqual([7.9, 'inboard', 9.1, 'inboard']);
    expect(plain(valueOf(line('2026-06-21  damage abrasion heavy from 1 m from inboard to 2 m from outboard'), 'station')!)).toEqual([1, 'inboard', 2, 'outboard']);
  });

  test('a name in front of a choice is optional, and the choice is never taken for it', () => {
    const values = (statement: string): string[] => [...first(`repair r on main {\n  ${statement}\n}\n`).statements[0]!.values].map(([key]) => key);
    expect(values('splice outboard eye bury 72 d')).toEqual(['end', 'form', 'bury', 'bury:clause']);
    expect(values('splice tail outboard eye bury 72 d')).toEqual(['piece', 'end', 'form', 'bury', 'bury:clause']);
  });

  test('text in quotes keeps its words', () => {
    expect(valueOf(line('2026-06-21  inspected "outside in: hook # slack"'), 'note')).toMatchObject({ type: 'text', text: 'outside in: hook # slack' });
  });

  test('an allowance speaks of its own line, or of the next one', () => {
    const [chunk] = bind('line main {\n  # allow taper-too-short: maker\'s splice\n  # and a remark\n  outboard  eye bury 72 d\n  length  30 m  # allow bare-end: on purpose\n}\n');
    expect(chunk!.allowances.map((a) => [a.code, a.reason, chunk!.chunk.text.slice(a.target).split(' ')[0]])).toEqual([
      ['taper-too-short', 'maker\'s splice', 'outboard'],
      ['bare-end', 'on purpose', 'length'],
    ]);
  });
});

describe('fixes', () => {
  const fixesOf = (text: string): unknown[] => bind(text).flatMap((c) => c.problems.flatMap((p) => (p.fixes ?? []).map((f) => [f.title, f.edits.map((e) => e.text), f.mechanical === true])));
  test('a slip of spelling is put right unasked; another unit never is', () => {
    expect(fixesOf(line('lenght  30 m'))).toEqual([['Write `length`', ['length'], true]]);
    expect(fixesOf(line('length  30 M'))).toEqual([['Write `m`', ['m'], true]]);
    expect(fixesOf(line('length  30 feets'))).toEqual([['Write `feet`', ['feet'], false]]);
  });
  test('a bare number is offered units, and none is chosen', () => {
    expect(fixesOf(line('length  30'))).toEqual([
      ['Write it in m (metre)', [' m'], false],
      ['Write it in mm (millimetre)', [' mm'], false],
      ['Write it in cm (centimetre)', [' cm'], false],
      ['Write it in in (inch, 25.4 mm exactly)', [' in'], false],
      ['Write it in ft (foot, 12 in)', [' ft'], false],
    ]);
  });
  const unitsOffered = (text: string): string[] => fixesOf(text).map((fix) => ((fix as [string, string[]])[1][0] ?? '').trim());
  test.each<[string, string, readonly string[]]>([
    ['the unit of the example comes first', line('outboard  eye bury 72'), ['d', 'mm', 'cm', 'in']],
    ['a rating in tonnes', 'vehicle v {\n  point  bow rated 4.7\n}\n', ['t', 'kN']],
    ['a rating that can only be small units', 'winch w {\n  rated  9500\n}\n', ['lbf', 'kg', 'lb', 'kgf', 'N']],
    ['a mass', 'vehicle v {\n  mass  5000\n}\n', ['kg', 'lb']],
    ['no metres of diameter', line('').replace('10 mm', '10'), ['mm', 'cm']],
    ['an angle or a share', 'pull p with w {\n  grade  20\n}\n', ['deg', '%']],
  ])('units for a bare number: %s', (_what, text, units) => expect(unitsOffered(text)).toEqual(units));

  test.each<[string, string, unknown]>([
    ['a date without its zeros', line('2026-6-1  inspected'), ['Write `2026-06-01`', ['2026-06-01'], true]],
    ['a date in another order that can be one day only', line('21/6/2026  inspected'), ['Write `2026-06-21`', ['2026-06-21'], false]],
    ['a misspelt word of a choice behind an optional name', line('2026-06-28  splice outbord eye bury 72 d'), ['Write `outboard`', ['outboard'], true]],
    ['a misspelt end of a position', line('2026-06-28  cut at 5 m from outbord'), ['Write `outboard`', ['outboard'], true]],
    ['a word that is near both ends of a line', line('2026-06-28  cut at 5 m from onboard'), ['Write `inboard`', ['inboard'], false]],
    ['a word in capitals that is near another one too', 'shackle s {\n  form  DEE\n}\n', ['Write `dee`', ['dee'], true]],
    ['the kind that stands behind its severity', line('2026-06-21  damage light abrasion at 5 m from inboard'), ['Write `abrasion light`', ['abrasion light'], true]],
    ['an inch mark', 'winch w {\n  barrel  2.5"\n}\n', ['Write `in` for inches', [' in'], false]],
    ['an inch mark that begins a text', 'winch w {\n  barrel  2.5" width 9"\n}\n', ['Write `in` for inches', [' in'], false]],
    ['a statement that stands twice', line('diameter  11 mm'), ['Remove the second one', [''], false]],
    ['a thousand with a point', 'winch w {\n  rated  9.500 lbf\n}\n', ['Write `9,500`', ['9,500'], false]],
    ['prose without quotes', line('2026-06-21  inspected nothing found, all fine.'), ['Put it into quotes', ['"nothing found, all fine."'], false]],
    ['a name in two words', 'vehicle old truck {\n}\n', ['Write `old-truck`', ['old-truck'], false]],
    ['an arrow with a space in it', 'chain c {\n  a - > b\n}\n', ['Write `->`', ['->'], true]],
    ['a brace below its head', 'winch w\n{\n  rated  42 kN\n}\n', ['Move `{` to the line above', [' {'], true]],
  ])('%s', (_what, text, fix) => expect(fixesOf(text)).toEqual([fix]));
  test('what stands twice goes with its line', () => {
    const text = line('diameter  11 mm');
    const [chunk] = bind(text);
    const { start, end } = chunk!.problems[0]!.fixes![0]!.edits[0]!.place;
    expect(text.slice(0, start) + text.slice(end)).toBe(line(''));
  });
  test('no fix writes the word that stands there', () => {
    for (const statement of ['2026-06-21  damage cut 1 strand at 12 m from inboard from outboard', '2026-06-21  damage cut 1 strand at 12 m from inboard to', '2026-06-21  damage light abrasion at 5 m from inboard']) {
      for (const problem of bind(line(statement))[0]!.problems) for (const fix of problem.fixes ?? []) for (const edit of fix.edits) expect(edit.text).not.toBe(line(statement).slice(edit.place.start, edit.place.end));
    }
  });
});

test.each(['１.9 t', '~4.7 t', '≈4.7 t', '<4.7 t', '±4.7 t', '4,7 t', '−4.7 t', ',500 t'])('half of a number, or about one, is not taken for it: wll %s', (wll) => {
  const text = `shackle bow-19 {\n  wll  ${wll}\n}\n`;
  expect(problemsOf(text).some((p) => p.includes('stray-character'))).toBe(true);
  const statement = first(text).statements.find((s) => s.definition.head === 'wll');
  expect(statement === undefined || (statement.broken.size > 0 && statement.values.all().length === 0)).toBe(true);
});

test.each(['0,500 t', '00,500 t', '-0,500 t'])('a comma behind a nought is asked about: wll %s', (wll) => {
  const text = `shackle bow-19 {\n  wll  ${wll}\n}\n`;
  const [number] = wll.split(' ');
  expect(problemsOf(text).some((p) => p.includes(`bad-number: \`${number}\` has a comma behind a nought`))).toBe(true);
  expect(first(text).statements.filter((s) => s.values.all().length > 0)).toEqual([]);
});

test('a count behind a stray sign is not taken for one', () => {
  expect(first('line main {\n  strands −12\n}\n').statements.every((s) => s.values.all().length === 0)).toBe(true);
});
