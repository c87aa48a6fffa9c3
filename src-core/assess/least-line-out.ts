import { isBelow } from '../base/compare.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { lineOutForPull } from '../mechanics/line-out-for-pull.ts';
import type { AssessedPull } from './assess-pull.ts';
import type { AssessedWinch } from './assess-winch.ts';

/** The least line out with which a winch has a pull, at the high end of what is needed. */
export function leastLineOut(winch: AssessedWinch, needed: Given): Value {
  if (isUnknown(winch.drum)) return winch.drum;
  const { high } = needed.amount;
  return asGiven(lineOutForPull({ F: { ...needed, amount: { low: high, high }, kind: 'line pull' }, F_1: asGiven(winch.firstLayerPull), L: winch.length, w: asGiven(winch.drum.wrapsPerLayer), B: winch.barrel, d: winch.diameter }));
}

/**
 * Where a pull that the winch can begin gets to be too much for it, because the line that comes in builds the drum up: the line that is still
 * out there (m). Undefined where it has enough with all line in, or not even where it begins.
 */
export function fadesAt({ winch, needed, available, reach }: AssessedPull): Given | undefined {
  if (winch === undefined || isUnknown(needed) || isUnknown(available) || isUnknown(reach.lineOut) || isBelow(available.amount.low, needed.amount.high)) return undefined;
  const least = leastLineOut(winch, needed);
  return isUnknown(least) || least.amount.high <= 0 ? undefined : least;
}
