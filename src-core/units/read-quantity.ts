import type { Span } from '../base/span.ts';
import type { Quantity } from './amount.ts';
import { dimensions, type Dimension } from './dimension.ts';
import { listUnits, unitMeant } from './unit-meant.ts';
import { ambiguousUnits, toSI, unitNamed, type Unit } from './unit-table.ts';

/** What the reader needs of a token; `number` covers `9,500`, `3.5` and `-2`, `fraction` covers `3/8`. */
export interface Lexeme extends Span {
  readonly kind: string;
  readonly text: string;
}

export type QuantityProblem =
  | { readonly problem: 'bare-number' | 'unknown-unit' | 'ambiguous-unit' | 'mixed-compound' | 'bad-number'; readonly message: string; readonly help: string; readonly span: Span; readonly replace?: string; /** What `replace` stands in place of, when not of `span`. */ readonly replaceSpan?: Span };

export interface QuantityRead {
  /** Undefined when there is a problem, or when the number stands alone (then `number` is set). */
  readonly quantity?: Quantity;
  /** The number itself, when no unit follows it. */
  readonly number?: number;
  readonly problem?: QuantityProblem;
  /** How many lexemes it took. */
  readonly used: number;
  readonly span: Span;
}

/** Beyond this no length, mass or force in a rig is meant. */
export const largestNumber = 1e12;

/** `0,500` is no thousands and no decimal point either: half of something, or five hundred of it. */
const isHalfThousands = (text: string): boolean => text.includes(',') && /^[+-]?0/.test(text);

/** The number in `9,500`, `3/8`, `-2.5`; undefined when it is none or too large to be meant. */
export function readNumber(text: string): number | undefined {
  if (text.length > 40 || isHalfThousands(text)) return undefined;
  const fraction = text.includes('/') ? /^([+-]?\d+)\/(\d+)$/.exec(text) : null;
  const value = fraction !== null ? Number(fraction[1]) / Number(fraction[2]) : Number(text.includes(',') ? text.replaceAll(',', '') : text);
  return Number.isFinite(value) && Math.abs(value) <= largestNumber ? value : undefined;
}

const isNumeric = (lexeme: Lexeme | undefined): boolean => lexeme !== undefined && (lexeme.kind === 'number' || lexeme.kind === 'fraction');

interface Piece {
  readonly value: number;
  readonly unit: Unit | undefined;
  readonly word: string | undefined;
  readonly wordSpan: Span | undefined;
  /** Lexemes of the number alone, and with its unit. */
  readonly bare: number;
  readonly used: number;
  readonly end: number;
  readonly bad?: Span;
  /** Set when a fraction with a sign of its own stands behind a number. */
  readonly signed?: { readonly whole: string; readonly fraction: string };
}

/** One number with its unit, if a unit word follows. */
function readPiece(lexemes: readonly Lexeme[], at: number): Piece | undefined {
  const first = lexemes[at];
  if (first === undefined || !isNumeric(first)) return undefined;
  let value = readNumber(first.text);
  let used = 1;
  let end = first.end;
  const second = lexemes[at + 1];
  if (first.kind === 'number' && second?.kind === 'fraction' && /^[+-]?\d+$/.test(first.text)) {
    const sign = /^[+-]/.exec(second.text)?.[0];
    // In `6-1/4` the hyphen joins, as it is written on drawings; any other sign here may be meant to take away.
    const joined = sign === '-' && second.start === first.end;
    const fraction = sign === undefined ? second.text : second.text.slice(1);
    const part = readNumber(fraction);
    value = value === undefined || part === undefined ? undefined : first.text.startsWith('-') ? value - part : value + part;
    used = 2;
    end = second.end;
    if (sign !== undefined && !joined) return { value: NaN, unit: undefined, word: undefined, wordSpan: undefined, bare: used, used, end, bad: { start: first.start, end }, signed: { whole: first.text, fraction } };
  }
  if (value === undefined) return { value: NaN, unit: undefined, word: undefined, wordSpan: undefined, bare: used, used, end, bad: { start: first.start, end } };
  const next = lexemes[at + used];
  if (next === undefined || (next.kind !== 'word' && next.kind !== 'symbol')) return { value, unit: undefined, word: undefined, wordSpan: undefined, bare: used, used, end };
  const slash = lexemes[at + used + 1];
  const per = lexemes[at + used + 2];
  if (slash?.text === '/' && per?.kind === 'word' && slash.start === next.end && per.start === slash.end) {
    const word = `${next.text}/${per.text}`;
    return { value, unit: unitNamed(word), word, wordSpan: { start: next.start, end: per.end }, bare: used, used: used + 3, end: per.end };
  }
  return { value, unit: unitNamed(next.text), word: next.text, wordSpan: next, bare: used, used: used + 1, end: next.end };
}

/** `short tons` and `metric tons` in two words, as the one unit that they mean. */
const tonsOf: Readonly<Record<string, string>> = { metric: 't', short: 'short-tons', long: 'long-tons' };

/** What is wrong with the word behind a number, and what to write; `used` counts what belongs to it. */
function unknownUnit(lexemes: readonly Lexeme[], at: number, piece: Piece, wanted: readonly Dimension[] | undefined): { readonly problem: QuantityProblem; readonly used: number } {
  const word = piece.word!;
  const span = piece.wordSpan!;
  const next = lexemes[at + piece.used];
  const said = { problem: 'unknown-unit' as const, span, message: `\`${word}\` is not a unit` };
  const first = lexemes[at]!;
  if (/^[kK]$/.test(word) && next !== undefined && unitNamed(next.text) !== undefined && /^\d{1,3}$/.test(first.text) && piece.bare === 1) {
    const thousands = `${first.text},000`;
    return { used: piece.used + 1, problem: { ...said, help: `write the thousands out: ${thousands} ${next.text}`, replace: thousands, replaceSpan: { start: first.start, end: span.end } } };
  }
  const ton = Object.hasOwn(tonsOf, word) && next !== undefined && /^tons?(?:nes?)?$/.test(next.text) ? tonsOf[word] : undefined;
  if (ton !== undefined && (wanted === undefined || wanted.includes('mass'))) {
    const both = { start: span.start, end: next!.end };
    return { used: piece.used + 1, problem: { ...said, span: both, message: `\`${word} ${next!.text}\` is not a unit`, help: `did you mean \`${ton}\`?`, replace: ton } };
  }
  const near = unitMeant(word, wanted);
  const list = wanted === undefined ? 'm, mm, ft, in, kN, lbf, kg, lb, d or deg' : listUnits(wanted);
  const help = near !== undefined ? `did you mean \`${near}\`?` : list === '' ? 'write the number alone' : `write a unit such as ${list}`;
  return { used: piece.used, problem: { ...said, help, ...(near === undefined ? {} : { replace: near }) } };
}

/**
 * Reads a quantity at `at`: `42 kN`, `9,500 lbf`, `3/8 in`, `1 3/4 in`, `6-1/4 in`, `22 ft 6 in`, `72 d`, `25 %`.
 * Words that may follow a bare number without being its unit are told by `isWordOfLine`. `wanted` says what may be
 * measured here: only units of that are suggested. Returns undefined when no number stands there.
 */
export function readQuantity(lexemes: readonly Lexeme[], at: number, isWordOfLine: (word: string) => boolean = () => false, wanted?: readonly Dimension[]): QuantityRead | undefined {
  const piece = readPiece(lexemes, at);
  if (piece === undefined) return undefined;
  const start = lexemes[at]!.start;
  if (piece.signed !== undefined) {
    const { whole, fraction } = piece.signed;
    return { used: piece.used, span: piece.bad!, problem: { problem: 'bad-number', span: piece.bad!, message: `a fraction with a sign stands behind \`${whole}\`: it may be added or taken away`, help: `write \`${whole} ${fraction}\` for ${whole} and ${fraction}`, replace: `${whole} ${fraction}` } };
  }
  if (piece.bad !== undefined) {
    const { text } = lexemes[at]!;
    if (isHalfThousands(text)) {
      return { used: piece.used, span: piece.bad, problem: { problem: 'bad-number', span: piece.bad, message: `\`${text}\` has a comma behind a nought: it may be a decimal point, or part of thousands`, help: `write \`${text.replace(',', '.')}\` where a decimal point is meant` } };
    }
    return { used: piece.used, span: piece.bad, problem: { problem: 'bad-number', span: piece.bad, message: 'this number cannot be read, or is too large to be meant', help: 'write an ordinary number, such as 9,500 or 3/8' } };
  }
  const bareSpan = { start, end: lexemes[at + piece.bare - 1]!.end };
  if (piece.unit === undefined) {
    if (piece.word === undefined || isWordOfLine(piece.word)) return { number: piece.value, used: piece.bare, span: bareSpan };
    const ambiguous = Object.hasOwn(ambiguousUnits, piece.word) ? ambiguousUnits[piece.word] : undefined;
    const choices = ambiguous?.choices.filter((choice) => wanted === undefined || wanted.includes(unitNamed(choice)!.dimension)) ?? [];
    if (ambiguous !== undefined && choices.length > 0) {
      const last = choices.at(-1)!;
      const help = `write \`${choices.slice(0, -1).join('`, `')}\` or \`${last}\``;
      return { used: piece.used, span: { start, end: piece.end }, problem: { problem: 'ambiguous-unit', span: piece.wordSpan!, message: `\`${piece.word}\` can mean ${ambiguous.meanings}`, help } };
    }
    const { used, problem } = unknownUnit(lexemes, at, piece, wanted);
    return { used, span: { start, end: lexemes[at + used - 1]!.end }, number: piece.value, problem };
  }
  const { unit } = piece;
  let last = unit;
  let total = toSI(piece.value, unit);
  let used = piece.used;
  let end = piece.end;
  // `22 ft 6 in`, `2 m 35 cm`: each further piece is a smaller unit of the same measure, and less than one of the last.
  for (;;) {
    const more = readPiece(lexemes, at + used);
    if (more?.unit === undefined || more.bad !== undefined) break;
    if (more.unit.dimension !== unit.dimension || unit.offset !== undefined) break;
    if (more.unit.factor >= last.factor || more.value < 0 || more.value * more.unit.factor >= last.factor * (1 + 1e-9)) {
      const span = { start, end: more.end };
      return { used: used + more.used, span, problem: { problem: 'mixed-compound', span, message: 'a compound goes from the larger unit to the smaller one', help: 'write it like 22 ft 6 in' } };
    }
    total = total < 0 || Object.is(piece.value, -0) ? total - toSI(more.value, more.unit) : total + toSI(more.value, more.unit);
    used += more.used;
    end = more.end;
    last = more.unit;
  }
  return { quantity: { value: total, dimension: unit.dimension, unit }, used, span: { start, end } };
}

/** `a length, such as 8.4 m`: for messages. */
export const describeDimension = (dimension: Dimension): string => {
  const article = /^[aeiou]/.test(dimension) ? 'an' : 'a';
  return dimension === 'count' ? 'a plain number' : dimension === 'diameters' ? 'a number of diameters, such as 72 d' : `${article} ${dimension.replace('-', ' ')}, such as ${dimensions[dimension].example}`;
};
