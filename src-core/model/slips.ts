import { didYouMean } from '../base/did-you-mean.ts';
import type { Span } from '../base/span.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Token } from '../syntax/tree.ts';
import type { Part } from '../vocabulary/shape.ts';
import { unitNamed } from '../units/unit-table.ts';
import { numberMeant, wordHere } from '../vocabulary/trade-words.ts';
import { clip } from './describe-part.ts';
import { ownerOf } from './word-owner.ts';
import type { ReadonlyValues } from './values.ts';

/** A statement while it is read: what stands at `at` fits nothing that waits for a value. */
export interface Reading {
  readonly chunk: Chunk;
  readonly tokens: readonly Token[];
  readonly at: number;
  readonly subject: string;
  /** A whole statement of this kind; empty when there is none to show. */
  readonly example: string;
  readonly words: ReadonlySet<string>;
  readonly values: ReadonlyValues;
}

/** What is wrong at a word, and what to write. */
export interface Slip {
  readonly code: 'unknown-word' | 'unexpected-value';
  readonly span: Span;
  readonly message: string;
  readonly help: string;
  readonly fix?: { readonly title: string; readonly span: Span; readonly text: string; readonly mechanical?: true };
}

type Choice = Extract<Part, { part: 'choice' }>;

export const isPositional = (part: Part): boolean => part.part !== 'clause' && part.part !== 'flag' && !('optional' in part && part.optional === true);

const write = (span: Span, text: string): NonNullable<Slip['fix']> => ({ title: `Write \`${clip(text)}\``, span, text });
const spelling = (span: Span, text: string): NonNullable<Slip['fix']> => ({ ...write(span, text), mechanical: true });

/** The word of the language that was meant. It may be written unasked only where no other one is near: which of two is meant is a claim. */
export function nearWord(written: string, choices: readonly string[]): { readonly text: string; readonly mechanical?: true } | undefined {
  const here = wordHere(written, choices);
  if (here !== undefined) return { text: here };
  const text = didYouMean(written, choices);
  if (text === undefined) return undefined;
  const sure = text.toLowerCase() === written.toLowerCase() || didYouMean(written, choices.filter((choice) => choice !== text)) === undefined;
  return { text, ...(sure ? { mechanical: true } : {}) };
}

/** A word that is none of `choices`; `subject` is what knows them. */
export function unknownWord(token: Token, choices: readonly string[], subject: string): Slip {
  const near = nearWord(token.text, choices);
  const list = choices.slice(0, 9).join(', ') + (choices.length > 9 ? ', ...' : '');
  const help = near === undefined ? `write one of ${list}` : `did you mean \`${near.text}\`? One of ${list}`;
  return { code: 'unknown-word', span: token, message: `\`${clip(token.text)}\` is not a word that ${subject} knows`, help, ...(near === undefined ? {} : { fix: { ...write(token, near.text), ...near } }) };
}

/** A word of the statement that stands where one of a choice is meant; undefined when it is no word of the statement. */
export function wordBefore({ tokens, at, subject, values }: Reading, part: Choice, token: Token, parts: readonly Part[], phrase: string): Slip | undefined {
  if (ownerOf(parts, token.text, values) === undefined) return undefined;
  const rest = tokens.slice(at);
  const later = rest.find((t) => t.kind === 'word' && Object.hasOwn(part.of, t.text));
  const said = { code: 'unknown-word' as const, span: token };
  if (later === undefined) return { ...said, message: `${phrase} lacks its ${part.key} before \`${token.text}\``, help: `write one of ${Object.keys(part.of).slice(0, 9).join(', ')} before it` };
  const turned = `${later.text} ${token.text}`;
  return { ...said, message: `\`${token.text}\` stands before the ${part.key} in ${phrase}`, help: `the ${part.key} comes first: \`${subject} ${turned}\``, ...(later === rest[0] ? { fix: spelling({ start: token.start, end: later.end }, turned) } : {}) };
}

/** An optional name that is a misspelt word of the choice behind it, which does not come: `splice outbord eye`. */
export function isMisspeltChoice({ tokens, at }: Reading, pending: readonly Part[]): boolean {
  const word = tokens[at]!.text;
  const choice = pending.find(isPositional);
  if (choice?.part !== 'choice' || Object.hasOwn(choice.of, word)) return false;
  const next = tokens[at + 1];
  return !(next?.kind === 'word' && Object.hasOwn(choice.of, next.text)) && didYouMean(word, Object.keys(choice.of)) !== undefined;
}

const pieceNames = new WeakMap<Chunk, ReadonlySet<string>>();

/** Names of the line of a chunk and of pieces that are cut from it. */
function piecesNamedIn(chunk: Chunk): ReadonlySet<string> {
  let names = pieceNames.get(chunk);
  if (names === undefined) {
    names = new Set([...chunk.text.matchAll(/(?:\bkeep|^[ \t]*line)[ \t]+([\p{L}\p{M}\p{N}_-]+)/gmu)].map((match) => match[1]!));
    pieceNames.set(chunk, names);
  }
  return names;
}

/** Several words in a row of which none has a meaning here, where a text may stand. The name of a piece may stand before prose. */
export function isProse({ chunk, tokens, at, words }: Reading, pending: readonly Part[]): boolean {
  const [first, second] = [tokens[at], tokens[at + 1]];
  if (first?.kind !== 'word' || second?.kind !== 'word' || words.has(first.text) || words.has(second.text)) return false;
  return pending.some((part) => part.part === 'text') && !piecesNamedIn(chunk).has(first.text);
}

/** Words up to the end of their line that were meant as text. */
export function unquoted({ chunk: { text }, subject }: Reading, token: Token): Slip {
  const stop = /[\r\n#"{}]/g;
  stop.lastIndex = token.start;
  const end = stop.exec(text)?.index ?? text.length;
  const prose = text.slice(token.start, end).trimEnd();
  const span = { start: token.start, end: token.start + prose.length };
  const fix = { title: 'Put it into quotes', span, text: `"${prose}"` };
  return { code: 'unexpected-value', span, message: `\`${clip(prose)}\` is prose without quotes in \`${subject}\``, help: `put prose into "...": "${clip(prose)}"`, ...(text[end] === '"' ? {} : { fix }) };
}

/** `8.4 m from inboard`: a position but for its first word. */
export function isPlaceWithoutAt({ tokens, at }: Reading): boolean {
  let i = at;
  while (tokens[i]?.kind === 'number' || tokens[i]?.kind === 'fraction') {
    while (tokens[i]?.kind === 'number' || tokens[i]?.kind === 'fraction') i++;
    if (unitNamed(tokens[i++]?.text ?? '')?.dimension !== 'length') return false;
  }
  return i > at && tokens[i]?.text === 'from' && tokens[i + 1]?.kind === 'word';
}

/** A word of the statement whose place is taken, or that belongs elsewhere; a word near one; or one that means nothing. */
export function unexpected(reading: Reading, token: Token, parts: readonly Part[]): Slip {
  const { tokens, at, subject, example, words, values } = reading;
  const code = 'unexpected-value';
  const rest = { start: token.start, end: tokens.at(-1)!.end };
  const here = `in \`${subject}\``;
  if (isPlaceWithoutAt(reading) && parts.some((part) => part.part === 'station' && !values.has(part.key))) {
    return { code, span: rest, message: `the position ${here} lacks its \`at\``, help: 'a position begins with `at`, a stretch with `from`', fix: write({ start: token.start, end: token.start }, 'at ') };
  }
  if (token.kind === 'word') {
    const owner = ownerOf(parts, token.text, values);
    if (owner?.bound === true) {
      const twice = tokens.slice(0, at).some((t) => t.text === token.text);
      const message = twice ? `\`${token.text}\` stands twice ${here}` : owner.word !== undefined ? `\`${token.text}\` stands beside \`${owner.word}\` ${here}, and one of them is meant` : `a second position stands ${here}`;
      return { code, span: rest, message, help: 'keep one of them; the first one is used' };
    }
    if (words.has(token.text)) return { code, span: token, message: `\`${token.text}\` stands at a wrong place ${here}`, help: example === '' ? 'remove it, or write it where it belongs' : `write it like \`${example}\`` };
    const number = numberMeant(token.text);
    if (number !== undefined) return { code, span: token, message: `\`${clip(token.text)}\` is a number in words ${here}`, help: `write \`${number}\``, fix: write(token, number) };
    const near = didYouMean(token.text, [...words].filter((w) => !values.has(w) && !values.has(`${w}:clause`)));
    if (near !== undefined) return { code, span: token, message: `\`${clip(token.text)}\` has no meaning here ${here}`, help: `did you mean \`${near}\`?`, fix: spelling(token, near) };
    const name = at === 1 && parts[0]?.part === 'new-name' ? leadingWords(reading) : [];
    if (name.length > 1) return nameInWords(subject, name);
  }
  const isNumber = token.kind === 'number' || token.kind === 'fraction';
  return { code, span: rest, message: `\`${clip(token.text)}\` has no meaning here ${here}`, help: isNumber && example !== '' ? `write it like \`${example}\`` : 'remove it, or put prose into "..."' };
}

function leadingWords({ tokens, words }: Reading): readonly Token[] {
  const end = tokens.findIndex((token) => token.kind !== 'word' || words.has(token.text));
  return end < 0 ? tokens : tokens.slice(0, end);
}

/** `vehicle old truck`. */
function nameInWords(subject: string, name: readonly Token[]): Slip {
  const joined = name.map((word) => word.text).join('-');
  const end = name.at(-1)!.end;
  return { code: 'unexpected-value', span: { start: name[1]!.start, end }, message: `the name in \`${subject}\` is several words`, help: `a name is one word, such as \`${clip(joined)}\`; put prose into "..."`, fix: write({ start: name[0]!.start, end }, joined) };
}

/** `winch 1front`. */
export function notAName({ chunk, tokens, at, subject }: Reading): Slip {
  const start = tokens[at]!.start;
  let { end } = tokens[at]!;
  for (const next of tokens.slice(at + 1)) {
    if (next.start !== end) break;
    end = next.end;
  }
  return { code: 'unexpected-value', span: { start, end }, message: `\`${clip(chunk.text.slice(start, end))}\` cannot be the name of a \`${subject}\``, help: 'a name begins with a letter, such as `front-1`' };
}
