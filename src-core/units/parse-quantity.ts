import { late } from '../base/late.ts';
import { between, exactly, type Amount } from './amount.ts';
import type { Dimension } from './dimension.ts';
import { readQuantity, type Lexeme } from './read-quantity.ts';
import type { Unit } from './unit-table.ts';

/** A number read from a text of its own. A bare number is a count and has no unit. */
export interface ParsedQuantity {
  /** SI value. */
  readonly value: number;
  readonly dimension: Dimension;
  readonly unit: Unit | undefined;
}

/** One number, or two ends of a range. */
export interface ParsedAmount {
  readonly amount: Amount;
  readonly dimension: Dimension;
  readonly unit: Unit | undefined;
}

/** No quantity is longer than this; what is longer is not looked at. */
const longest = 80;
const pieces = late(() => /([+-]?\d+\/\d+)|([+-]?(?:\d{1,3}(?:,\d{3})+(?!\d)|\d+)(?:\.\d+)?|[+-]?\.\d+)|(%|°[CF]?|\/)|([\p{L}_][\p{L}\p{M}\p{N}_²]*(?:-[\p{L}\p{M}\p{N}_]+)*)/uy);
const lexemeKinds = ['fraction', 'number', 'symbol', 'word'] as const;

function lexemesOf(text: string): Lexeme[] | undefined {
  const found: Lexeme[] = [];
  let at = 0;
  while (at < text.length) {
    if (/\s/.test(text[at]!)) {
      at++;
      continue;
    }
    const pattern = pieces();
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return undefined;
    const kind = lexemeKinds[match.slice(1).findIndex((part) => part !== undefined)]!;
    found.push({ kind, text: match[0], start: at, end: at + match[0].length });
    at += match[0].length;
  }
  return found;
}

const cannotRead = (text: string): string => `\`${text.length > longest ? text.slice(0, longest) + '…' : text}\` cannot be read as a number with a unit, such as 20,000 lbf, 22 ft 6 in or 72 d`;

function readWhole(text: string, lexemes: readonly Lexeme[]): ParsedQuantity | string {
  const read = readQuantity(lexemes, 0);
  if (read === undefined) return cannotRead(text);
  if (read.problem !== undefined) return `${read.problem.message}; ${read.problem.help}`;
  if (read.used !== lexemes.length) return cannotRead(text);
  if (read.quantity !== undefined) return read.quantity;
  return read.number === undefined ? cannotRead(text) : { value: read.number, dimension: 'count', unit: undefined };
}

/** Reads `20,000 lbf`, `22 ft 6 in`, `3/8 in`, `72 d`, `3`; a text that is none of these gives a sentence that says why. */
export function parseQuantity(text: string): ParsedQuantity | string {
  const lexemes = text.length > longest ? undefined : lexemesOf(text);
  return lexemes === undefined ? cannotRead(text) : readWhole(text, lexemes);
}

/** Reads what `parseQuantity` reads, and a range: `15 to 25 %`, `1 m to 120 cm`. */
export function parseAmount(text: string): ParsedAmount | string {
  const lexemes = text.length > longest ? undefined : lexemesOf(text);
  if (lexemes === undefined) return cannotRead(text);
  const middle = lexemes.findIndex((lexeme) => lexeme.text === 'to');
  if (middle < 0) {
    const one = readWhole(text, lexemes);
    return typeof one === 'string' ? one : { amount: exactly(one.value), dimension: one.dimension, unit: one.unit };
  }
  const left = lexemes.slice(0, middle);
  const right = lexemes.slice(middle + 1);
  const second = readWhole(text, right);
  if (typeof second === 'string') return second;
  let first = readWhole(text, left);
  if (typeof first === 'string') return first;
  // In `15 to 25 %` the unit stands once, behind both numbers.
  if (first.unit === undefined && second.unit !== undefined) {
    const shared = right.filter((lexeme) => lexeme.kind === 'word' || lexeme.kind === 'symbol');
    const joined = readWhole(text, [...left, ...shared]);
    if (typeof joined === 'string') return joined;
    first = joined;
  }
  if (first.dimension !== second.dimension) return `the two ends of \`${text}\` do not measure the same thing; write both in units of one kind`;
  return { amount: between(first.value, second.value), dimension: second.dimension, unit: second.unit };
}
