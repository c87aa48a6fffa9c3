import { lex } from './lexer.ts';
import type { Token } from './tokens.ts';

/** All tokens of a text in order. */
export const tokensIn = (text: string): Token[] => lex(text).lines.flatMap(({ tokens, brace }) => (brace === undefined ? tokens : [...tokens, brace]));

/** Every token of a text with its comments, in order, as the lexer sees them. */
export function lexemesOf(text: string): { readonly kind: string; readonly start: number; readonly text: string }[] {
  const comments = lex(text).comments.map(({ text, start }) => ({ kind: 'comment', start, text }));
  const others = tokensIn(text).map(({ kind, start, text }) => ({ kind: kind as string, start, text }));
  return [...comments, ...others].sort((x, y) => x.start - y.start);
}
