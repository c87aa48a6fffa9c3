import { lex } from './lexer.ts';
import { RigToken } from './tokens.ts';

/** Every token of a text with its comments, in order, as the lexer sees them. */
export function lexemesOf(text: string): { readonly kind: string; readonly start: number; readonly text: string }[] {
  const lexed = lex(text);
  const comments = lexed.comments.map(({ text, start }) => ({ kind: 'comment', start, text }));
  const others = lexed.tokens.flatMap((token) => (token instanceof RigToken ? { kind: token.kind as string, start: token.start, text: token.text } : []));
  return [...comments, ...others].sort((x, y) => x.start - y.start);
}
