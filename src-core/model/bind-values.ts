import type { Span } from '../base/span.ts';
import type { Token } from '../syntax/tree.ts';
import type { Part } from '../vocabulary/shape.ts';
import { bindCount, bindQuantity } from './bind-quantity.ts';
import { bindRoute } from './bind-route.ts';
import { bindStation } from './bind-station.ts';
import { clip, describePart, examplePart } from './describe-part.ts';
import { isMisspeltChoice, isPlaceWithoutAt, isPositional, isProse, notAName, unexpected, unknownWord, unquoted, wordBefore } from './slips.ts';
import type { StatementReading } from './statement-reading.ts';

/** Reads the values of a statement against its parts; a token that fits nothing is reported once and ends the statement. */
export function bindValues(reading: StatementReading, parts: readonly Part[], whole: Span): void {
  const missing = bindParts(reading, parts, true, inQuotes(reading.subject));
  const token = reading.tokens[reading.at];
  const unnamed = missing.find((part) => part.part === 'new-name');
  if (token !== undefined && !reading.failed) reportUnexpected(reading, token, parts, unnamed !== undefined);
  for (const part of missing) {
    reading.break('key' in part ? part.key : '');
    if (reading.failed) continue;
    const end = reading.tokens.at(-1)?.end ?? whole.end;
    reading.report('missing-value', { start: whole.start, end }, `\`${reading.subject}\` lacks ${describePart(part)}`, `write it like ${part === unnamed && reading.example !== '' ? `\`${reading.example}\`` : examplePart(part)}`);
  }
  if (reading.failed) for (const part of parts) if ('key' in part && !reading.values.has(part.key)) reading.break(part.key);
}

const quoted = new Map<string, string>();

/** The name of a statement or block, of which there are few, as a message shows it. */
function inQuotes(subject: string): string {
  let text = quoted.get(subject);
  if (text === undefined) quoted.set(subject, (text = `\`${subject}\``));
  return text;
}

const nothingMissing: readonly Part[] = [];

/** Returns the required parts that did not come. */
function bindParts(reading: StatementReading, parts: readonly Part[], outermost: boolean, subject: string): readonly Part[] {
  const [only] = parts;
  // Most statements are one value.
  if (only !== undefined && parts.length === 1) {
    const token = reading.tokens[reading.at];
    if (token === undefined || reading.failed || !canStart(reading, only, token, parts)) return 'optional' in only && only.optional ? nothingMissing : parts;
    bindPart(reading, only, token, subject, parts);
    return nothingMissing;
  }
  const pending = parts.slice();
  while (reading.at < reading.tokens.length && !reading.failed) {
    const token = reading.tokens[reading.at]!;
    let index = 0;
    while (index < pending.length && !canStart(reading, pending[index]!, token, pending)) index++;
    if (index === pending.length) break;
    const part = pending[index]!;
    // Required values come in their order; one that is passed over is missing.
    if (!outermost && index > 0 && isPositional(part) && pending.slice(0, index).some(isPositional)) break;
    pending.splice(index, 1);
    bindPart(reading, part, token, isNumber(part) && hasSeveralNumbers(parts) ? numberOf(part, subject) : subject, parts);
  }
  return pending.length === 0 ? pending : pending.filter((part) => !('optional' in part && part.optional));
}

function canStart(reading: StatementReading, part: Part, token: Token, pending: readonly Part[]): boolean {
  switch (part.part) {
    case 'new-name':
    case 'name': {
      if (token.kind !== 'word') return false;
      if (part.optional !== true) return true;
      if (part.part === 'name' && (isProse(reading, pending) || isMisspeltChoice(reading, pending))) return false;
      return !meansAnother(token, part, pending);
    }
    case 'quantity': {
      if (token.kind !== 'number' && token.kind !== 'fraction') return false;
      return pending.length === 1 || (!isCounted(reading.tokens[reading.at + 1], pending) && !(pending.some((other) => other.part === 'station') && isPlaceWithoutAt(reading)));
    }
    case 'count': {
      if (token.kind !== 'number' && token.kind !== 'fraction') return false;
      if (part.nounNeeded !== true) return true;
      const next = reading.tokens[reading.at + 1];
      return next?.kind === 'word' && ((part.noun ?? []) as readonly string[]).includes(next.text);
    }
    case 'choice':
      return token.kind === 'word' && (part.optional !== true || Object.hasOwn(part.of, token.text));
    case 'text':
      return token.kind === 'string' || token.kind === 'open-string';
    case 'date':
      return token.kind === 'date';
    case 'marking':
      return token.kind === 'word';
    case 'flag':
    case 'clause':
      return token.kind === 'word' && token.text === part.word;
    case 'station':
      return token.kind === 'word' && (token.text === 'at' || token.text === 'from');
    case 'route':
      return token.kind === 'word' || token.kind === 'arrow';
  }
}

/** A word that begins another part than this one. */
const meansAnother = (token: Token, part: Part, pending: readonly Part[]): boolean =>
  pending.some((other) => other !== part && ((other.part === 'choice' && Object.hasOwn(other.of, token.text)) || ((other.part === 'clause' || other.part === 'flag') && other.word === token.text) || (other.part === 'station' && (token.text === 'at' || token.text === 'from'))));

/** A number before a noun is a number of those. */
const isCounted = (next: Token | undefined, pending: readonly Part[]): boolean =>
  next?.kind === 'word' && pending.some((other) => other.part === 'count' && other.nounNeeded === true && ((other.noun ?? []) as readonly string[]).includes(next.text));

function bindPart(reading: StatementReading, part: Part, token: Token, subject: string, parts: readonly Part[]): void {
  switch (part.part) {
    case 'new-name':
      reading.at++;
      reading.values.set(part.key, { type: 'new-name', place: reading.place(token), name: token.text });
      return;
    case 'name': {
      reading.at++;
      const named = { type: 'name' as const, place: reading.place(token), name: token.text, of: part.of };
      reading.values.set(part.key, named);
      (reading.names ??= []).push(named);
      return;
    }
    case 'quantity': {
      const value = bindQuantity(reading, part.measure, subject);
      if (value === undefined) reading.break(part.key);
      else reading.values.set(part.key, value);
      return;
    }
    case 'count':
      return bindCount(reading, part, token, subject);
    case 'choice':
      reading.at++;
      if (Object.hasOwn(part.of, token.text)) {
        reading.values.set(part.key, { type: 'word', place: reading.place(token), word: token.text });
      } else {
        reading.break(part.key);
        const before = wordBefore(reading, part, token, parts, subject);
        if (before !== undefined) reading.failed = true;
        else reading.unread = true;
        reading.slip(before ?? unknownWord(token, Object.keys(part.of), subject));
      }
      return;
    case 'text':
      reading.at++;
      reading.values.set(part.key, { type: 'text', place: reading.place(token), text: token.text.slice(1, token.kind === 'string' ? -1 : undefined) });
      return;
    case 'date': {
      reading.at++;
      const day = reading.day(token);
      if (day === undefined) reading.break(part.key);
      else reading.values.set(part.key, { type: 'date', place: reading.place(token), day });
      return;
    }
    case 'marking':
      reading.at++;
      if (new RegExp(`^(?:${part.pattern})$`).test(token.text)) {
        reading.values.set(part.key, { type: 'word', place: reading.place(token), word: token.text });
      } else {
        reading.break(part.key);
        reading.report('unknown-word', token, `\`${clip(token.text)}\` is not a marking that ${subject} knows`, `write one such as \`${part.example}\``);
      }
      return;
    case 'flag':
      reading.at++;
      reading.values.set(part.key, { type: 'flag', place: reading.place(token) });
      return;
    case 'clause': {
      reading.at++;
      const missing = bindParts(reading, part.parts, false, `\`${part.word}\` in \`${reading.subject}\``);
      const last = reading.tokens[reading.at - 1] ?? token;
      reading.values.set(`${part.key}:clause`, { type: 'clause', place: reading.place({ start: token.start, end: last.end }) });
      for (const inner of missing) {
        if ('key' in inner) reading.break(inner.key);
        if (reading.failed) continue;
        const next = reading.tokens[reading.at];
        reading.report('missing-value', token, `\`${part.word}\` in \`${reading.subject}\` lacks ${describePart(inner)}`, `write something like ${examplePart(inner)} behind \`${part.word}\`${next === undefined ? '' : ` and before \`${clip(next.text)}\``}`);
        reading.failed = true;
      }
      return;
    }
    case 'station':
      return bindStation(reading, part.key, part.stretch, token);
    case 'route':
      return bindRoute(reading, part.key);
  }
}

function reportUnexpected(reading: StatementReading, token: Token, parts: readonly Part[], unnamed: boolean): void {
  reading.failed = true;
  if (token.kind === 'open-string' || reading.unread) return;
  if (unnamed && (token.kind === 'number' || token.kind === 'fraction' || token.kind === 'date')) return reading.slip(notAName(reading));
  if (parts[0]?.part !== 'new-name' && isProse(reading, parts.filter((part) => !('key' in part && reading.values.has(part.key))))) {
    const slip = unquoted(reading, token);
    reading.prose = slip.span;
    return reading.slip(slip);
  }
  reading.slip(unexpected(reading, token, parts));
}

const isNumber = (part: Part): boolean => part.part === 'quantity' || part.part === 'count';

/** With several numbers in a statement its name says too little. */
function hasSeveralNumbers(parts: readonly Part[]): boolean {
  let numbers = 0;
  for (const part of parts) if (isNumber(part)) numbers++;
  return numbers > 1;
}

/** Which of the numbers of a statement is spoken of. */
const numberOf = (part: Part, subject: string): string =>
  part.part === 'count' ? `the number of ${part.noun?.[0] ?? part.key} in ${subject}` : part.part === 'quantity' ? `the ${part.key} in ${subject}` : subject;
