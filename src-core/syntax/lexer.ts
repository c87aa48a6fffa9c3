import type { IToken } from 'chevrotain';
import { RigToken, lineBreak, type Comment, type TokenKind } from './tokens.ts';

/** The tokens of a text with its line breaks, and its comments, each in order. */
export interface Lexed {
  readonly tokens: readonly (RigToken | typeof lineBreak)[];
  readonly comments: readonly Comment[];
  /** Whether every token may be part of a statement. */
  readonly sound: boolean;
}

// Every pattern is linear: none can backtrack over what it has taken.
const date = /\d{4}-\d{1,2}-\d{1,2}(?![\w-])/y;
const fraction = /[+-]?\d+\/\d+/y;
const number = /[+-]?(?:\d{1,3}(?:,\d{3})+(?![\d])|\d+)(?:\.\d+)?|[+-]?\.\d+/y;
const word = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy;
const symbol = /%|°[CF]?|\//y;
/** Anything else: taken in runs, so that a line of rubbish is a few tokens. */
const bad = /[^\s#"{}%°/\d\p{L}_→]+|[^\r\n]/uy;

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

/** Where the match of a pattern at an offset ends; the offset itself when there is none. */
function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

/** Where a word of plain letters ends; -1 where a letter of another script may belong to it. */
function plainWordEnd(text: string, start: number): number {
  for (let at = start + 1; ; at++) {
    const c = text.charCodeAt(at);
    if (isWordStart(c) || isDigit(c)) continue;
    if (c >= 128) return -1;
    if (c !== 45) return at;
    const next = text.charCodeAt(at + 1);
    if (next >= 128) return -1;
    if (!isWordStart(next) && !isDigit(next)) return at;
  }
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
  const tokens: (RigToken | IToken)[] = [];
  const comments: Comment[] = [];
  let at = 0;
  let sound = true;
  const take = (kind: TokenKind, end: number): void => {
    if (kind === 'bad' || kind === 'open-string') sound = false;
    tokens.push(new RigToken(kind, known(text.slice(at, end)), at, end));
    at = end;
  };
  /** Takes what the pattern finds; false when it finds nothing. */
  const took = (kind: TokenKind, pattern: RegExp): boolean => {
    const end = endOf(pattern, text, at);
    if (end === at) return false;
    take(kind, end);
    return true;
  };
  while (at < text.length) {
    const c = text.charCodeAt(at);
    if (c === 32 || c === 9 || c === 11 || c === 12 || c === 0xa0 || c === 0xfeff) {
      at++;
    } else if (c === 10 || c === 13) {
      tokens.push(lineBreak);
      at += c === 13 && text.charCodeAt(at + 1) === 10 ? 2 : 1;
    } else if (isWordStart(c)) {
      const end = plainWordEnd(text, at);
      if (end >= 0) take('word', end);
      else took('word', word);
    } else if (isDigit(c)) {
      const end = plainNumberEnd(text, at);
      if (end >= 0) take('number', end);
      else if (!took('date', date) && !took('fraction', fraction)) took('number', number);
    } else if (c === 123) {
      take('left-brace', at + 1);
    } else if (c === 125) {
      take('right-brace', at + 1);
    } else if (c === 35) {
      let end = at + 1;
      while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
      comments.push({ text: text.slice(at, end), start: at, end });
      at = end;
    } else if (c === 34) {
      let end = at + 1;
      while (end < text.length && text.charCodeAt(end) !== 34 && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
      if (text.charCodeAt(end) === 34) take('string', end + 1);
      else take('open-string', at + text.slice(at, openStringEnd(text, at)).trimEnd().length);
    } else if (c === 43 || c === 45 || c === 46) {
      if (took('fraction', fraction) || took('number', number)) continue;
      if (c === 45 && text.charCodeAt(at + 1) === 62) take('arrow', at + 2);
      else took('bad', bad);
    } else if (c === 0x2192) {
      take('arrow', at + 1);
    } else if (!took('symbol', symbol) && !took('word', word)) {
      took('bad', bad);
    }
  }
  return { tokens, comments, sound };
}
