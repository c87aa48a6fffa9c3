import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lex } from '../../src-core/syntax/lexer.ts';
import { referenceLexemes } from '../support/reference-lexer.ts';

interface Cut {
  readonly lines: readonly string[];
  readonly comments: readonly string[];
}
interface Piece {
  readonly kind: string;
  readonly start: number;
  readonly text: string;
}

const shown = ({ kind, start, text }: Piece): string => `${kind} ${start} ${text}`;

function cut(text: string): Cut {
  const { lines, comments } = lex(text);
  for (const { tokens } of lines) for (const token of tokens) expect(token.end - token.start).toBe(token.text.length);
  return { lines: lines.map(({ tokens, brace }) => [...tokens, ...(brace === undefined ? [] : [brace])].map(shown).join(', ')), comments: comments.map((c) => `${c.start} ${c.end} ${c.text}`) };
}

/** The same of the reference: a line ends at a line break or behind a brace, and empty ones are left out. */
function expected(text: string): Cut {
  const all = referenceLexemes(text);
  const lines: string[][] = [[]];
  for (const piece of all) {
    if (piece.kind === 'comment') continue;
    if (piece.kind !== 'newline') lines.at(-1)!.push(shown(piece));
    if (piece.kind === 'newline' || piece.kind === 'left-brace' || piece.kind === 'right-brace') lines.push([]);
  }
  return { lines: lines.filter((line) => line.length > 0).map((line) => line.join(', ')), comments: all.filter((t) => t.kind === 'comment').map((t) => `${t.start} ${t.start + t.text.length} ${t.text}`) };
}

// Source: the lexer of the parser library, given the patterns of the language.
test.each(readdirSync(join(import.meta.dirname, '../../examples')).filter((name) => name.endsWith('.rig')))('%s is cut as the reference cuts it', (name) => {
  const text = readFileSync(join(import.meta.dirname, '../../examples', name), 'utf8');
  expect(cut(text)).toEqual(expected(text));
});

const bits = ['line', 'bow-22', 'a', '-', '--', '->', '>', '→', '1', '12', '2026', '-06', '-1', '/', ',', ',500', '.', '.5', '+', '%', '°', '°C', '"', '" {', '#', ' ', '\t', '\f', '\u00a0', '\ufeff', '\u2003', '\u2028', '\n', '\r', '\r\n', '{', '}', 'é', 'ж-1', '\u0301', '٣', '½', '\u{1d7d8}', '\u{1f600}', '\ud800', '\udc00', '_', ';', "'", '\0', 'tail-é', 'x-\u0301'];

test('any text is cut as the reference cuts it', () => {
  fc.assert(
    fc.property(fc.array(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...bits) }, { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 3 }) }), { maxLength: 24 }), (parts) => {
      const text = parts.join('');
      expect(cut(text)).toEqual(expected(text));
    }),
    { numRuns: 5000 },
  );
});
