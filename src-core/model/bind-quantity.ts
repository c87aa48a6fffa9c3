import type { Span } from '../base/span.ts';
import type { Token } from '../syntax/tree.ts';
import { kinds, type Dimension } from '../units/dimension.ts';
import { printNumber } from '../units/print.ts';
import { describeDimension, readNumber, readQuantity } from '../units/read-quantity.ts';
import { standardGravity, unitNamed, unitsOf } from '../units/unit-table.ts';
import type { Measure, Part } from '../vocabulary/shape.ts';
import type { BoundQuantity, Fix } from './bound.ts';
import { clip, describeMeasure, examplePart } from './describe-part.ts';
import { dimensionsOf, pointForComma, rangePassed, saidLimit, unitsForBare } from './quantity-advice.ts';
import type { StatementReading } from './statement-reading.ts';

export function bindCount(reading: StatementReading, part: Extract<Part, { part: 'count' }>, token: Token, subject: string): void {
  if (isTouched(reading, reading.at, reading.at + 1)) {
    reading.failed = true;
    reading.break(part.key);
    reading.at++;
    return;
  }
  reading.at++;
  const value = token.kind === 'number' ? readNumber(token.text) : undefined;
  const next = reading.tokens[reading.at];
  let end = token.end;
  if (part.noun !== undefined && next?.kind === 'word' && part.noun.includes(next.text)) {
    reading.at++;
    end = next.end;
  } else if (next?.kind === 'symbol' || (next?.kind === 'word' && next.start === token.end && !reading.words.has(next.text))) {
    reading.failed = true;
    reading.break(part.key);
    reading.report('wrong-dimension', { start: token.start, end: next.end }, `${subject} takes a plain number${part.noun ? ` of ${part.noun[0]}` : ''}, not ${clip(token.text)} ${clip(next.text)}`, `write it like \`${examplePart(part).replaceAll('`', '')}\``);
    return;
  }
  const span = { start: token.start, end };
  if (value === undefined || !Number.isInteger(value) || value < part.min || value > part.max) {
    reading.break(part.key);
    reading.report('value-out-of-range', span, `${subject} is ${reading.text(span)}; a whole number from ${part.min} to ${printNumber(part.max, 'nearest', 0)} is meant here`, 'correct the number');
    return;
  }
  reading.values.set(part.key, { type: 'count', place: reading.place(span), count: value });
}

/** A number with its unit, in the range of its measure; undefined, with a problem, where none can be read. */
export function bindQuantity(reading: StatementReading, measure: Measure, subject: string): BoundQuantity | undefined {
  const read = readQuantity(reading.tokens, reading.at, (word) => reading.words.has(word), dimensionsOf(measure));
  if (read === undefined) return undefined;
  const first = reading.at;
  reading.at += read.used;
  // With a character that was passed over, as in `−30 m`, `2½ in` and `6 - 1/4 in`, it is another number; that character has its message.
  if (isTouched(reading, first, reading.at)) {
    reading.failed = true;
    return undefined;
  }
  const expected: Dimension = kinds[measure.kind].dimension;
  const problem = read.problem;
  if (problem !== undefined) {
    const replaced = problem.replaceSpan ?? problem.span;
    // Another unit is another claim: only a slip of upper and lower case is put right unasked.
    const spelling = problem.replace?.toLowerCase() === reading.chunk.text.slice(replaced.start, replaced.end).toLowerCase();
    const fixes = problem.replace === undefined ? undefined : [{ title: `Write \`${problem.replace}\``, edits: [{ place: reading.place(replaced), text: problem.replace }], ...(spelling ? { mechanical: true as const } : {}) }];
    reading.report(problem.problem, problem.span, problem.message, problem.help, fixes);
    // The unit behind a number that cannot be read belongs to it and is not spoken of again.
    const next = reading.tokens[reading.at];
    if (problem.problem === 'bad-number' && next?.kind === 'word' && unitNamed(next.text) !== undefined) reading.at++;
    return undefined;
  }
  if (read.quantity === undefined) {
    const value = read.number!;
    if (expected === 'count') return inRange(reading, measure, { type: 'quantity', place: reading.place(read.span), value, kind: measure.kind, unit: unitsOf('ratio')[0]! }, subject);
    bareNumber(reading, measure, read.span, value, subject);
    return undefined;
  }
  const { value, dimension, unit } = read.quantity;
  const place = reading.place(read.span);
  const base = { type: 'quantity' as const, place, kind: measure.kind, unit };
  if (dimension === expected) return inRange(reading, measure, { ...base, value }, subject);
  if (dimension === 'mass' && measure.load === true) return inRange(reading, measure, { ...base, value: value * standardGravity, mass: value }, subject);
  if (dimension === 'diameters' && measure.diameters === true) return inRange(reading, measure, { ...base, value, inDiameters: true }, subject);
  if (dimension === 'ratio' && measure.share === true) return inRange(reading, measure, { ...base, value: Math.atan(value) }, subject);
  const hint = expected === 'force' && dimension === 'length' ? '' : expected === 'mass' && dimension === 'force' ? ': a mass is meant here, not a force' : '';
  reading.report('wrong-dimension', read.span, `${subject} takes ${describeMeasure(measure)}; ${reading.text(read.span)} is ${describeDimension(dimension).replace(/, such as .*$/, '')}`, `write it like \`${measure.example}\`${hint}`);
  return undefined;
}

function bareNumber(reading: StatementReading, measure: Measure, span: Span, value: number, subject: string): void {
  const mark = reading.chunk.text.charAt(span.end);
  const inchMark = mark === '"';
  const next = reading.tokens[reading.at];
  const written = reading.text(span);
  if (next !== undefined && next.kind === 'number' && /^[1-9]\d{0,2}$/.test(written) && /^\d{3}(?:\.\d+)?$/.test(next.text)) {
    reading.failed = true;
    const thousands = `${written},${next.text}`;
    const both = { start: span.start, end: next.end };
    return reading.report('bad-number', both, `${subject} is ${reading.text(both)}, two numbers with a space between`, `for thousands write \`${thousands}\` or \`${written}${next.text}\``, [{ title: `Write \`${thousands}\``, edits: [{ place: reading.place(both), text: thousands }] }]);
  }
  // A decimal comma has a message of its own.
  if (mark === ',' && next?.start === span.end + 1) {
    reading.failed = true;
    return;
  }
  if (/^["'’′″”]$/.test(mark)) {
    reading.failed = true;
    // A mark that begins no text has a message of its own.
    if (next?.kind !== 'string') return;
  }
  const fixes: Fix[] = inchMark
    ? [{ title: 'Write `in` for inches', edits: [{ place: reading.place({ start: span.end, end: span.end + 1 }), text: ' in' }] }]
    : unitsForBare(measure, value).map((u) => ({ title: `Write it in ${u.symbol} (${u.meaning})`, edits: [{ place: reading.place({ start: span.end, end: span.end }), text: ` ${u.symbol}` }] }));
  reading.report('bare-number', span, `${subject} is ${reading.text(span)} without a unit`, inchMark ? `write \`in\` for inches: ${reading.text(span)} in` : `write ${describeMeasure(measure)}`, fixes);
}

function inRange(reading: StatementReading, measure: Measure, bound: BoundQuantity, subject: string): BoundQuantity | undefined {
  const passed = rangePassed(measure, bound.value, bound.inDiameters === true);
  if (passed === undefined) return bound;
  const written = reading.text(bound.place);
  const meant = pointForComma(written, passed);
  const edits = meant === undefined ? [] : [{ place: reading.place({ start: bound.place.start, end: bound.place.start + meant.from.length }), text: meant.to }];
  const fixes = meant === undefined ? undefined : [{ title: `Write \`${meant.to}\``, edits }];
  reading.report('value-out-of-range', bound.place, `${subject} is ${written}; it must ${saidLimit(measure, bound, passed)}`, meant?.help ?? (passed === 'low' ? measure.below : undefined) ?? 'correct the number or its unit', fixes);
  return undefined;
}

/** Whether nothing but space stands between two offsets. */
const isSpace = (c: number): boolean => c === 32 || (9 <= c && c <= 13) || c === 160;
const isOfWord = (letter: string): boolean => (letter < '\x80' ? /[A-Za-z0-9]/ : /[\p{L}\p{N}]/u).test(letter);

/** Whether something that was passed over stands right before or between some tokens. */
function isTouched({ chunk, tokens }: StatementReading, from: number, to: number): boolean {
  for (let i = Math.max(1, from); i < to; i++) if (!isBlank(chunk.text, tokens[i - 1]!.end, tokens[i]!.start)) return true;
  // Before the first value stands the word that begins the statement.
  if (from > 0) return false;
  let before = tokens[0]!.start - 1;
  while (before >= 0 && isSpace(chunk.text.charCodeAt(before))) before--;
  return before >= 0 && !isOfWord(chunk.text[before]!);
}

function isBlank(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (text.charCodeAt(at) !== 32) return text.slice(at, end).trim() === '';
  return true;
}
