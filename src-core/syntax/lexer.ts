import { late } from '../base/late.ts';
import { fitted } from '../base/fitted.ts';
import { RigLine, type Comment, type Token, type TokenKind } from './tokens.ts';

/** A text cut into lines of tokens, those that hold something, and its comments, each in order. */
export interface Lexed {
  readonly lines: readonly RigLine[];
  readonly comments: readonly Comment[];
  /** Whether every token may be part of a statement. */
  readonly sound: boolean;
}

/** All tokens in order, each brace behind its line. */
export const tokensOf = ({ lines }: Lexed): Token[] => lines.flatMap(({ tokens, brace }) => (brace === undefined ? tokens : [...tokens, brace]));

// Every pattern is linear: none can backtrack over what it has taken.
const date = /\d{4}-\d{1,2}-\d{1,2}(?![\w-])/y;
const fraction = /[+-]?\d+\/\d+/y;
const number = /[+-]?(?:\d{1,3}(?:,\d{3})+(?![\d])|\d+)(?:\.\d+)?|[+-]?\.\d+/y;
const word = late(() => /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy);
/** The same where all letters are plain, which nearly every word is. */
const plainWord = /[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*/y;
const symbol = /%|°[CF]?|\//y;
/** Anything else: taken in runs, so that a line of rubbish is a few tokens. */
const bad = late(() => /[^\s#"{}%°/\d\p{L}_→]+|[^\r\n]/uy);

const isDigit = (c: number): boolean => c >= 48 && c <= 57;
const isWordStart = (c: number): boolean => (c >= 97 && c <= 122) || (c >= 65 && c <= 90) || c === 95;

/** The same few words and numbers make most of any rig: each is held once. */
const knownTexts = new Map<string, string>();
const mostKnown = 20_000;

function known(text: string): string {
  // A longer one is a view into its text, and would keep that.
  if (text.length > 12) return text;
  const same = knownTexts.get(text);
  if (same !== undefined) return same;
  if (knownTexts.size < mostKnown) knownTexts.set(text, text);
  return text;
}

const lineBreak = /[\r\n]/g;

/** Where the line ends on which an offset stands, its line break not counted. */
export function lineEndFrom(text: string, at: number): number {
  lineBreak.lastIndex = at;
  return lineBreak.test(text) ? lineBreak.lastIndex - 1 : text.length;
}

const quoteOrBreak = /["\r\n]/g;

/** Offset behind the quote that closes the one at `start`; undefined when its line has none. */
export function closingQuote(text: string, start: number): number | undefined {
  quoteOrBreak.lastIndex = start + 1;
  return quoteOrBreak.test(text) && text.charCodeAt(quoteOrBreak.lastIndex - 1) === 34 ? quoteOrBreak.lastIndex : undefined;
}

/**
 * Offset at which text with a forgotten quote ends: with its line, or before the brace that ends the line, so that a
 * forgotten quote in the head of a block costs the head and not the block.
 */
export function openStringEnd(text: string, start: number): number {
  const end = lineEndFrom(text, start);
  let last = end;
  while (last > start + 1 && (text[last - 1] === ' ' || text[last - 1] === '\t')) last--;
  return text[last - 1] === '{' && last - 1 > start ? last - 1 : end;
}

/** Where the match of a pattern at an offset ends; the offset itself when there is none. */
function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

/** Where a word ends that begins with a plain letter. */
function wordEnd(text: string, start: number): number {
  const end = endOf(plainWord, text, start);
  const next = text.charCodeAt(end);
  // A letter of another script may belong to it.
  return next >= 128 || (next === 45 && text.charCodeAt(end + 1) >= 128) ? endOf(word(), text, start) : end;
}

/** Where whole digits end; -1 where what follows may belong to the number. */
function plainNumberEnd(text: string, start: number): number {
  let at = start + 1;
  while (isDigit(text.charCodeAt(at))) at++;
  const c = text.charCodeAt(at);
  return c === 44 || c === 45 || c === 46 || c === 47 ? -1 : at;
}

/** Cuts a text into tokens: everything in it but spaces and comments. Never throws; takes time in proportion to the text. */
export function lex(text: string): Lexed {
  const lines: RigLine[] = [];
  const comments: Comment[] = [];
  let tokens: Token[] = [];
  let at = 0;
  let sound = true;
  const endLine = (brace?: Token): void => {
    if (tokens.length === 0 && brace === undefined) return;
    lines.push(new RigLine(fitted(tokens), brace));
    tokens = [];
  };
  const token = (kind: TokenKind, end: number): Token => {
    const made = { kind, text: known(text.slice(at, end)), start: at, end };
    at = end;
    return made;
  };
  /** Takes what the pattern finds; false when it finds nothing. */
  const took = (kind: TokenKind, pattern: RegExp): boolean => {
    const end = endOf(pattern, text, at);
    if (end === at) return false;
    tokens.push(token(kind, end));
    return true;
  };
  const takeRest = (): void => {
    sound = false;
    took('bad', bad());
  };
  while (at < text.length) {
    const c = text.charCodeAt(at);
    if (c === 32 || c === 9 || c === 11 || c === 12 || c === 0xa0 || c === 0xfeff) {
      at++;
    } else if (c === 10 || c === 13) {
      endLine();
      at++;
    } else if (isWordStart(c)) {
      tokens.push(token('word', wordEnd(text, at)));
    } else if (isDigit(c)) {
      const end = plainNumberEnd(text, at);
      if (end >= 0) tokens.push(token('number', end));
      else if (!took('date', date) && !took('fraction', fraction)) took('number', number);
    } else if (c === 123) {
      endLine(token('left-brace', at + 1));
    } else if (c === 125) {
      endLine(token('right-brace', at + 1));
    } else if (c === 35) {
      const end = lineEndFrom(text, at);
      comments.push({ text: text.slice(at, end), start: at, end });
      at = end;
    } else if (c === 34) {
      const end = closingQuote(text, at);
      if (end !== undefined) {
        tokens.push(token('string', end));
        continue;
      }
      sound = false;
      tokens.push(token('open-string', at + text.slice(at, openStringEnd(text, at)).trimEnd().length));
    } else if (c === 43 || c === 45 || c === 46) {
      if (took('fraction', fraction) || took('number', number)) continue;
      if (c === 45 && text.charCodeAt(at + 1) === 62) tokens.push(token('arrow', at + 2));
      else takeRest();
    } else if (c === 0x2192) {
      tokens.push(token('arrow', at + 1));
    } else if (!took('symbol', symbol) && !took('word', word())) {
      takeRest();
    }
  }
  endLine();
  return { lines, comments, sound };
}
