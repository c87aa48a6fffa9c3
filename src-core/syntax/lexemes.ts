import { rigLexer, tokenKind } from './tokens.ts';

/** Every token of a text with its comments, in order, as the lexer sees them. */
export function lexemesOf(text: string): { readonly kind: string; readonly start: number; readonly text: string }[] {
  const lexed = rigLexer().tokenize(text);
  const comments = (lexed.groups['comments'] ?? []).map((t) => ({ kind: 'comment', start: t.startOffset, text: t.image }));
  const others = lexed.tokens.filter((t) => t.tokenType.name !== 'Newline').map((t) => ({ kind: tokenKind(t.tokenType) as string, start: t.startOffset, text: t.image }));
  return [...comments, ...others].sort((x, y) => x.start - y.start);
}
