import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatFile } from '../../src-core/syntax/format.ts';
import { lexemesOf } from '../../src-core/syntax/lexemes.ts';
import { topHeads, vocabulary } from '../../src-core/vocabulary/vocabulary.ts';

const format = (text: string): string => formatFile(text, topHeads);

/** Tokens and comments in order, without line breaks and without the spaces at the end of a comment. */
const contents = (text: string): string[] => lexemesOf(text).map(({ kind, text }) => `${kind} ${text.trimEnd()}`);

const behaves = (text: string): void => {
  const once = format(text);
  expect(contents(once)).toEqual(contents(text));
  expect(format(once)).toBe(once);
};

test('a form feed at the beginning of a line stays, since it keeps two pages apart', () => {
  expect(format('{d\n\f\n}')).toBe('{d\n\f\n}');
  expect(format('vehicle wren {\n\fvehicle plover   {\n}\n')).toBe('vehicle wren {\n\fvehicle plover   {\n}\n');
  behaves('{d\n\f\n}');
});

test('a broken line that opens a block ends the column above it', () => {
  behaves('""{kN\n}"{\n\ni m}');
});

test('heads, values, comments and blank lines', () => {
  expect(
    format(`

# a note
vehicle   plover "flatbed"{
      mass 2,650kg # by the ticket


 point bow   rated 4.7 t

}
`),
  ).toBe(`# a note
vehicle plover "flatbed" {
  mass  2,650 kg  # by the ticket

  point  bow rated 4.7 t
}
`);
});

test('a run of statements shares a column; comments do not end it', () => {
  expect(format('winch w {\nrated 42 kN\n# seen on the plate\nfairlead hawse condition scored\n}\n')).toBe(`winch w {
  rated     42 kN
  # seen on the plate
  fairlead  hawse condition scored
}
`);
});

test('a logbook keeps its columns while it grows', () => {
  expect(format('line main {\n2025-04-02 fitted\n2026-02-14    pulled 31 kN\n}\n')).toBe(`line main {
  2025-04-02  fitted
  2026-02-14  pulled     31 kN
}
`);
});

test('routes are read along, not down', () => {
  expect(format('chain c after fix {\nmain   outboard->bow-22 ->  tail inboard\nout 21 m\n}\n')).toBe(`chain c after fix {
  main outboard -> bow-22 -> tail inboard
  out  21 m
}
`);
});

test('one statement a line', () => {
  expect(format('shackle b { body 22 mm }\n')).toBe('shackle b {\n  body  22 mm\n}\n');
});

test('a line that a reason speaks of is not cut in two', () => {
  const reason = '# allow taper-missing: made by the maker\nline main { outboard eye bury 72 d }\n';
  expect(format(reason)).toBe(reason);
  const behind = 'line main { outboard eye bury 72 d } # allow taper-missing: made by the maker\n';
  expect(format(behind)).toBe(behind);
});

test('a broken line stays as it is, its neighbours do not', () => {
  expect(format('winch w {\n rated    : 42 kN\n      barrel "64 mm\n width    230 mm\n}\n')).toBe('winch w {\n rated    : 42 kN\n      barrel "64 mm\n  width  230 mm\n}\n');
});

test('a block that is not closed stays as it is, the next one does not', () => {
  expect(format('line main {\n      length 3 m\nwinch w   {\nrated 42 kN\n}\n')).toBe('line main {\n      length 3 m\nwinch w {\n  rated  42 kN\n}\n');
});

test.each(['mass 1,234.50 kg', 'length 22 ft 6 in', 'diameter 3/8 in', 'flange 6-1/4 in', 'flange 3 -1/2 in', 'speed 4 m/min', 'note "two  spaces"'])('numbers and prose keep their characters: %s', (statement) => {
  expect(format(`x y {\n  ${statement}\n}\n`)).toContain(statement.replace(' ', '  '));
});

test('a brace below its head stays there, and its block is laid out', () => {
  expect(format('winch w # in front\n{\nrated 42 kN\n}\n')).toBe('winch w  # in front\n{\n  rated  42 kN\n}\n');
});

test('line breaks are of one kind, the first one of the file', () => {
  expect(format('winch w {\r\nrated 42 kN\n}\r')).toBe('winch w {\r\n  rated  42 kN\r\n}\r\n');
  expect(format('winch w {\rrated 42 kN\r}')).toBe('winch w {\n  rated  42 kN\n}\n');
});

test('nothing stays nothing', () => {
  expect(format('')).toBe('');
  expect(format('\n \n\n')).toBe('');
});

test('every example of the vocabulary', () => {
  for (const block of vocabulary) {
    behaves(block.example);
    for (const statement of [...block.statements, ...(block.entries ?? [])]) behaves(`${block.head} x {\n${statement.example}\n}\n`);
  }
});

test('every example rig', () => {
  const folder = new URL('../../examples/', import.meta.url);
  const rigs = readdirSync(folder).filter((name) => name.endsWith('.rig'));
  expect(rigs).not.toEqual([]);
  for (const rig of rigs) behaves(readFileSync(new URL(rig, folder), 'utf8'));
});

const piece = fc.constantFrom(
  'line', 'main', 'winch', 'use', 'cut', '"practice.rig"', '"', '{', '}', '\n', '\r\n', '\r', '  ', '\t', '# note  ', '# allow bury-too-short: why\n', '\n\n\n', '12', '-5', '1/2', '9,500', '.5', '%', '/', '°C', 'mm', '2026-06-21', '2026-6-1',
  '->', '→', ':', '-', '<<<<<<<', 'é', ' ', '\ufeff', '\u2028', '0',
);

test('any tokens in any order', () => {
  fc.assert(fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => behaves(pieces.join(''))), { numRuns: 3000 });
});

test('any tokens on lines of a block', () => {
  const line = fc.array(piece.filter((p) => !/[\r\n{}]/.test(p)), { maxLength: 8 }).map((parts) => parts.join(' '));
  fc.assert(fc.property(fc.array(line, { maxLength: 8 }), (lines) => behaves(`line main {\n${lines.join('\n')}\n}\n`)), { numRuns: 1000 });
});

test('a formatted file means the same: no token moves to another block', () => {
  const shape = (text: string): string => {
    let depth = 0;
    return contents(text).map((t) => (t === 'LeftBrace {' ? `${depth++}{` : t === 'RightBrace }' ? `}${--depth}` : `${depth}${t}`)).join('\n');
  };
  fc.assert(fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => shape(format(pieces.join(''))) === shape(pieces.join(''))));
});
