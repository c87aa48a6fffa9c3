import { notKnown, show } from '../assess/show.ts';
import { isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { kinds } from '../units/dimension.ts';

/** A value as it is printed on a sheet. A load that was written as a mass shows both. */
export function showOnSheet(value: Value): string {
  if (isUnknown(value)) return notKnown(value);
  const written = writtenAsMass(value);
  return written === undefined ? show(value) : `${show(value)} (${written})`;
}

function writtenAsMass({ kind, origin }: Given): string | undefined {
  if (origin.from !== 'written' || origin.unit !== undefined || kinds[kind].dimension !== 'force') return undefined;
  const { chunk, start, end } = origin.place;
  const text = 'text' in chunk && typeof chunk.text === 'string' ? chunk.text.slice(start, end).replace(/\s+/g, ' ') : '';
  return /^[\d.,/ ]+ ?[a-z-]+$/i.test(text) ? text : undefined;
}
