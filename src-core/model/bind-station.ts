import type { Place } from '../base/span.ts';
import type { Token } from '../syntax/tree.ts';
import { ends } from '../vocabulary/blocks/line.ts';
import { bindQuantity } from './bind-quantity.ts';
import type { BoundQuantity, BoundValue } from './bound.ts';
import { nearWord, unknownWord } from './slips.ts';
import type { StatementReading } from './statement-reading.ts';

/** `at 8.4 m from inboard`, `from 7.9 m to 9.1 m from inboard`. */
export function bindStation(reading: StatementReading, key: string, stretch: boolean, first: Token): void {
  reading.at++;
  const problemsBefore = reading.problems.length;
  const station = first.text === 'at' || !stretch ? placeAt(reading, first) : stretchFrom(reading, first);
  if (station !== undefined) {
    reading.values.set(key, station);
    return;
  }
  reading.break(key);
  reading.failed = true;
  if (reading.problems.length > problemsBefore) return;
  const last = reading.tokens[Math.min(reading.at, reading.tokens.length - 1)] ?? first;
  const example = stretch && first.text === 'from' ? '`from 7.9 m to 9.1 m from inboard`' : '`at 8.4 m from inboard`';
  reading.report('missing-value', { start: first.start, end: Math.max(last.end, first.end) }, 'a position says its distance and from which end', `write it like ${example}`);
}

function placeAt(reading: StatementReading, first: Token): BoundValue | undefined {
  const distance = distanceAt(reading, first.text);
  if (distance === undefined) return undefined;
  const end = endFrom(reading);
  return end === undefined ? undefined : { type: 'station', place: placeSince(reading, first), from: { distance, end } };
}

function stretchFrom(reading: StatementReading, first: Token): BoundValue | undefined {
  const near = distanceAt(reading, first.text);
  if (near === undefined) return undefined;
  const nearEnd = endFrom(reading);
  if (reading.word('to') === undefined) return undefined;
  const far = distanceAt(reading, 'to');
  if (far === undefined) return undefined;
  const farEnd = endFrom(reading);
  return farEnd === undefined ? undefined : { type: 'station', place: placeSince(reading, first), from: { distance: near, end: nearEnd ?? farEnd }, to: { distance: far, end: farEnd } };
}

const placeSince = (reading: StatementReading, first: Token): Place => reading.place({ start: first.start, end: reading.tokens[reading.at - 1]!.end });

function distanceAt(reading: StatementReading, word: string): BoundQuantity | undefined {
  const token = reading.tokens[reading.at];
  if (token === undefined || (token.kind !== 'number' && token.kind !== 'fraction')) return undefined;
  return bindQuantity(reading, { kind: 'length', min: 0, max: 2000, example: '8.4 m' }, `\`${word}\` in \`${reading.subject}\``);
}

function endFrom(reading: StatementReading): 'inboard' | 'outboard' | undefined {
  const save = reading.at;
  if (reading.word('from') === undefined) return undefined;
  const token = reading.tokens[reading.at];
  if (token?.kind === 'word' && Object.hasOwn(ends, token.text)) {
    reading.at++;
    return token.text as 'inboard' | 'outboard';
  }
  if (token?.kind === 'word' && nearWord(token.text, Object.keys(ends)) !== undefined) {
    reading.at++;
    reading.slip(unknownWord(token, Object.keys(ends), '`from`'));
    return undefined;
  }
  reading.at = save;
  return undefined;
}
