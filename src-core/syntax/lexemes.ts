import { lex, tokensOf } from './lexer.ts';

/** Every token of a text with its comments, in order, as the lexer sees them. */
export function lexemesOf(text: string): { readonly kind: string; readonly start: number; readonly text: string }[] {
  const lexed = lex(text);
  const comments = lexed.comments.map(({ text, start }) => ({ kind: 'comment', start, text }));
  const others = tokensOf(lexed).map(({ kind, start, text }) => ({ kind: kind as string, start, text }));
  return [...comments, ...others].sort((x, y) => x.start - y.start);
}
