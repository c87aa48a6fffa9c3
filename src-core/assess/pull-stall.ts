import { isUnknown, type Given } from '../mechanics/derivation.ts';
import type { AssessedPull, Loaded } from './assess-pull.ts';

/** A load as it would be with the winch at its stall. */
export interface AtStall {
  readonly loaded: Loaded;
  readonly load: Given;
}

/** What everything has when the load sticks and the winch pulls all it can; empty where that is not known. */
export function atStall({ available, tension, loaded }: AssessedPull): AtStall[] {
  if (isUnknown(available) || isUnknown(tension) || !(tension.amount.high > 0)) return [];
  const times = available.amount.high / tension.amount.high;
  return loaded.flatMap((l): AtStall[] => (isUnknown(l.load) ? [] : [{ loaded: l, load: { ...l.load, amount: { low: l.load.amount.low * times, high: l.load.amount.high * times } } }]));
}
