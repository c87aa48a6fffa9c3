import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lex } from '../../src-core/syntax/lexer.ts';
import { RigToken } from '../../src-core/syntax/tokens.ts';
import { referenceLexemes } from '../support/reference-lexer.ts';

/** Tokens and comments in order; a line break has no place of its own, so it stands where the tokens around it put it. */
function cut(text: string): { tokens: string[]; comments: string[] } {
  const { tokens, comments } = lex(text);
  return { tokens: tokens.map((t) => (t instanceof RigToken ? `${t.kind} ${t.start} ${t.end} ${t.text}` : 'newline')), comments: comments.map((c) => `${c.start} ${c.end} ${c.text}`) };
}

function expected(text: string): { tokens: string[]; comments: string[] } {
  const all = referenceLexemes(text);
  const end = (t: { start: number; text: string }): number => t.start + t.text.length;
  return {
    tokens: all.filter((t) => t.kind !== 'comment').map((t) => (t.kind === 'newline' ? 'newline' : `${t.kind} ${t.start} ${end(t)} ${t.text}`)),
    comments: all.filter((t) => t.kind === 'comment').map((t) => `${t.start} ${end(t)} ${t.text}`),
  };
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
