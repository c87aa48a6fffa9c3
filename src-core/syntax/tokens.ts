import { createToken, Lexer, type TokenType } from 'chevrotain';

// Every pattern is linear: none can backtrack over what it has taken.
const hint = (text: string): number[] => [...new Set([...text].map((c) => c.charCodeAt(0)))];
const digits = '0123456789';
// The lexer picks patterns by first character; characters from 256 on share buckets of 255, so one of each stands for all.
const beyondLatin = Array.from({ length: 258 }, (_, i) => Math.min(0xffff, 256 + i * 255));
const latin = Array.from({ length: 256 }, (_, i) => i);
const wordStarts = [...latin.filter((c) => /[\p{L}_]/u.test(String.fromCharCode(c))), ...beyondLatin];


/** The lexer drops the `u` flag of a plain pattern; a matcher keeps it. */
const unicode = (source: string): { exec: (text: string, offset: number) => RegExpExecArray | null } => {
  const pattern = new RegExp(source, 'uy');
  return {
    exec(text, offset) {
      pattern.lastIndex = offset;
      return pattern.exec(text);
    },
  };
};

export const Comment = createToken({ name: 'Comment', pattern: /#[^\r\n]*/ });
export const Newline = createToken({ name: 'Newline', pattern: /\r\n|\n|\r/, start_chars_hint: ['\r', '\n'] });
export const Space = createToken({ name: 'Space', pattern: /[ \t\f\v\u00a0\ufeff]+/ });
export const DateToken = createToken({ name: 'Date', pattern: /\d{4}-\d{1,2}-\d{1,2}(?![\w-])/ });
export const Fraction = createToken({ name: 'Fraction', pattern: /[+-]?\d+\/\d+/, start_chars_hint: hint('+-' + digits) });
export const NumberToken = createToken({
  name: 'Number',
  pattern: /[+-]?(?:\d{1,3}(?:,\d{3})+(?![\d])|\d+)(?:\.\d+)?|[+-]?\.\d+/,
  start_chars_hint: hint('+-.' + digits),
});
export const StringToken = createToken({ name: 'String', pattern: /"[^"\r\n]*"/ });

/**
 * Offset at which text with a forgotten quote ends: with its line, or before the brace that ends the line, so that a
 * forgotten quote in the head of a block costs the head and not the block.
 */
export function openStringEnd(text: string, start: number): number {
  let end = start + 1;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
  let last = end;
  while (last > start + 1 && (text[last - 1] === ' ' || text[last - 1] === '\t')) last--;
  return text[last - 1] === '{' && last - 1 > start ? last - 1 : end;
}

export const OpenString = createToken({
  name: 'OpenString',
  pattern: {
    exec(text: string, offset: number) {
      if (text[offset] !== '"') return null;
      const image = text.slice(offset, openStringEnd(text, offset)).trimEnd();
      return Object.assign([image] as [string], { index: offset, input: text }) as RegExpExecArray;
    },
  },
  line_breaks: false,
  start_chars_hint: ['"'],
});
export const Arrow = createToken({ name: 'Arrow', pattern: /->|→/, start_chars_hint: ['-', '→'] });
export const LeftBrace = createToken({ name: 'LeftBrace', pattern: /\{/ });
export const RightBrace = createToken({ name: 'RightBrace', pattern: /\}/ });
export const SymbolToken = createToken({ name: 'Symbol', pattern: /%|°[CF]?|\//, start_chars_hint: ['%', '°', '/'] });
export const Word = createToken({ name: 'Word', pattern: unicode('[\\p{L}_][\\p{L}\\p{M}\\p{N}_]*(?:-[\\p{L}\\p{M}\\p{N}_]+)*'), line_breaks: false, start_chars_hint: wordStarts });
/** Anything else: taken in runs, so that a line of rubbish is a few tokens. */
export const Bad = createToken({ name: 'Bad', pattern: unicode('[^\\s#"{}%°/\\d\\p{L}_→]+|[^\\r\\n]'), line_breaks: false, start_chars_hint: [...latin, ...beyondLatin] });

const inOrder: TokenType[] = [Space, Newline, Comment, DateToken, Fraction, NumberToken, StringToken, OpenString, Arrow, LeftBrace, RightBrace, SymbolToken, Word, Bad];

export type TokenKind = 'word' | 'number' | 'fraction' | 'date' | 'string' | 'open-string' | 'arrow' | 'symbol' | 'left-brace' | 'right-brace' | 'bad';

const kindOf: Record<string, TokenKind> = {
  Date: 'date',
  Fraction: 'fraction',
  Number: 'number',
  String: 'string',
  OpenString: 'open-string',
  Arrow: 'arrow',
  LeftBrace: 'left-brace',
  RightBrace: 'right-brace',
  Symbol: 'symbol',
  Word: 'word',
  Bad: 'bad',
};

export const tokenKind = (type: TokenType): TokenKind => kindOf[type.name]!;

export const parserTokens = inOrder.filter((t) => t !== Space && t !== Comment);
// Comments are kept beside the statements; spaces are the gaps between tokens.
Comment.GROUP = 'comments';
Space.GROUP = Lexer.SKIPPED;

let lexer: Lexer | undefined;

/** Made on first use: a program that reads no rig does not pay for it. */
export function rigLexer(): Lexer {
  lexer ??= new Lexer(inOrder, { positionTracking: 'onlyOffset', skipValidations: true });
  return lexer;
}
