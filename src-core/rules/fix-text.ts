import type { Place } from '../base/span.ts';
import type { Given } from '../mechanics/derivation.ts';
import type { BoundQuantity } from '../model/bound.ts';
import type { Chunk } from '../syntax/chunk.ts';
import { kinds } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { exactly } from '../units/amount.ts';

/** A needed length as text for the file, in the unit that stands there, rounded up. */
export function lengthText(needed: Given, written: BoundQuantity): string {
  const unit = written.inDiameters ? undefined : written.unit;
  return printAmount(exactly(needed.amount.high), kinds[needed.kind].dimension, { unit, careful: 'up', system: unit?.system === 'us' ? 'us' : 'metric' });
}

/** The place with the rest of its line, so that nothing is left of it; by itself where braces share the line. */
export function wholeLine(place: Place): Place {
  const { text } = place.chunk as Chunk;
  const before = /[^\r\n]*$/.exec(text.slice(0, place.start))![0];
  const after = /^[^\r\n]*(?:\r\n|\n|\r)?/.exec(text.slice(place.end))![0];
  if (/[{}]/.test(before) || /^[^#]*[{}]/.test(after)) return place;
  return { chunk: place.chunk, start: place.start - before.length, end: place.end + after.length };
}
