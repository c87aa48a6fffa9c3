import type { Place } from '../base/span.ts';
import { show, showLike, unitOf, writtenUnit } from '../assess/show.ts';
import { isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import type { Chunk } from '../syntax/chunk.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { sources } from '../trade/sources.ts';

/** The words that stand at a place, with single spaces. */
export const textAt = (place: Place): string => (place.chunk as Chunk).text.slice(place.start, place.end).replace(/\s+/g, ' ');

/** A rating as force; one that was written as a mass shows its mass too. */
export function limitText(limit: Value, unit = unitOf(limit)): string {
  if (isUnknown(limit)) return 'a value that is not known';
  if (limit.origin.from !== 'written') return show(limit, { unit });
  const shown = show(limit, { unit });
  const written = textAt(limit.origin.place);
  return written === shown ? shown : `${shown} (${written})`;
}

/** A load and the limit it is compared with, in one unit. */
export function loadAndLimit(load: Given, limit: Given): { readonly load: string; readonly most: string; readonly limit: string } {
  const unit = unitOf(limit) ?? unitOf(load) ?? writtenUnit(load, 'force');
  const careful = load.origin.from === 'written' ? 'nearest' : 'up';
  return { load: show(load, { unit, careful }), most: showLike(exactly(load.amount.high), load, careful, unit), limit: limitText(limit, unit) };
}

/** Where a value comes from, for the source line of a finding. */
export function sourceOf(value: Given): string {
  const { origin } = value;
  switch (origin.from) {
    case 'written':
      return 'a `practice` block, or the figure written here';
    case 'derived':
      return origin.derivation.sources.map(printSource).join('; ');
    default:
      return printSource(origin.source);
  }
}

export const sourceOfStandard = (standard: string): string => printSource(sources[standard === 'AS-2741' ? 'as-2741' : 'rr-c-271']);
