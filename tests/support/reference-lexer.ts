import { createToken, Lexer } from 'chevrotain';
import { openStringEnd } from '../../src-core/syntax/lexer.ts';
import type { TokenKind } from '../../src-core/syntax/tokens.ts';

/** Every character may begin it: what the library works out of a pattern of all scripts is not needed here. */
const any = [...Array.from({ length: 256 }, (_, i) => i), ...Array.from({ length: 258 }, (_, i) => Math.min(0xffff, 256 + i * 255))];
/** The library drops the `u` flag of a plain pattern; a matcher keeps it. */
const unicode = (source: string) => ({
  exec(text: string, offset: number) {
    const pattern = new RegExp(source, 'uy');
    pattern.lastIndex = offset;
    return pattern.exec(text);
  },
});
const token = (name: TokenKind, pattern: RegExp | ReturnType<typeof unicode>) => createToken({ name, pattern: pattern as RegExp, line_breaks: false, start_chars_hint: any });

const newline = createToken({ name: 'newline', pattern: /\r\n|\n|\r/, start_chars_hint: any });
const openString = {
  exec(text: string, offset: number) {
    if (text[offset] !== '"') return null;
    const image = text.slice(offset, openStringEnd(text, offset)).trimEnd();
    return Object.assign([image] as [string], { index: offset, input: text }) as RegExpExecArray;
  },
};
const lexer = new Lexer(
  [
    createToken({ name: 'space', pattern: /[ \t\f\v\u00a0\ufeff]+/, group: Lexer.SKIPPED, start_chars_hint: any }),
    newline,
    createToken({ name: 'comment', pattern: /#[^\r\n]*/, group: 'comments', start_chars_hint: any }),
    token('date', /\d{4}-\d{1,2}-\d{1,2}(?![\w-])/),
    token('fraction', /[+-]?\d+\/\d+/),
    token('number', /[+-]?(?:\d{1,3}(?:,\d{3})+(?![\d])|\d+)(?:\.\d+)?|[+-]?\.\d+/),
    token('string', /"[^"\r\n]*"/),
    token('open-string', openString),
    token('arrow', /->|→/),
    token('left-brace', /\{/),
    token('right-brace', /\}/),
    token('symbol', /%|°[CF]?|\//),
    token('word', unicode('[\\p{L}_][\\p{L}\\p{M}\\p{N}_]*(?:-[\\p{L}\\p{M}\\p{N}_]+)*')),
    token('bad', unicode('[^\\s#"{}%°/\\d\\p{L}_→]+|[^\\r\\n]')),
  ],
  { positionTracking: 'onlyOffset', skipValidations: true },
);

/** The tokens and comments of a text as the parser library's own lexer cuts it, by a pattern for each kind. */
export function referenceLexemes(text: string): { readonly kind: string; readonly start: number; readonly text: string }[] {
  const lexed = lexer.tokenize(text);
  const all = [...lexed.tokens, ...(lexed.groups['comments'] ?? [])].sort((a, b) => a.startOffset - b.startOffset);
  return all.map((t) => ({ kind: t.tokenType.name, start: t.startOffset, text: t.tokenType === newline ? '\n' : t.image }));
}
