import { derivedFrom } from '../trade/sources.ts';
import { asGiven, isUnknown, mostOf, unknown, type Cause, type Derivation, type Derived, type DerivationInput, type Value } from './derivation.ts';

export interface StrengthOfPlace {
  /** What the place is, in words: `cut strands at 8.4 m`. */
  readonly name: string;
  readonly strength: Value;
}

const weakestLink = derivedFrom('weakest-link', 'mechanics: a line in one pull is as strong as its weakest place');

/**
 * The least strength of all places. One place that is unknown makes the least unknown with that place's cause: nobody can say that the
 * unknown one is not the weakest. It is no more than the others, then, and no more than what the unknown ones are at most.
 */
export function strengthOfWorstPlace(places: readonly [StrengthOfPlace, ...StrengthOfPlace[]]): Derived {
  const inputs: DerivationInput[] = [];
  let cause: Cause | undefined;
  for (const { name, strength } of places) {
    if (isUnknown(strength)) cause ??= strength.unknown;
    const given = mostOf(strength);
    if (given !== undefined) inputs.push({ symbol: `F_${inputs.length + 1}`, meaning: name, given });
  }
  if (cause !== undefined) return unknown(cause, inputs.length === 0 ? undefined : mostOf(asGiven(least(inputs))));
  return least(inputs);
}

function least(inputs: readonly DerivationInput[]): Derivation {
  return {
    calculation: 'strength-of-worst-place',
    means: 'strength at the weakest place',
    symbol: 'F',
    amount: { low: Math.min(...inputs.map((input) => input.given.amount.low)), high: Math.min(...inputs.map((input) => input.given.amount.high)) },
    kind: 'breaking strength',
    formula: inputs.length === 1 ? 'F = F_1' : `F = min(${inputs.map((input) => input.symbol).join(', ')})`,
    inputs,
    sources: [weakestLink],
    assumptions: ['the whole line carries the same pull'],
    notes: [],
  };
}

/** Which place is the weakest by its low end, or by what it is at most; the first of equals. Undefined when nothing is known of any. */
export function worstPlace<P extends StrengthOfPlace>(places: readonly P[]): P | undefined {
  let worst: P | undefined;
  let least = Infinity;
  for (const place of places) {
    const most = mostOf(place.strength);
    if (most !== undefined && most.amount.low < least) [worst, least] = [place, most.amount.low];
  }
  return worst;
}
