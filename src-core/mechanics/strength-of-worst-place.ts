import { derivedFrom } from '../trade/sources.ts';
import { isUnknown, type Derivation, type Derived, type DerivationInput, type Value } from './derivation.ts';

export interface StrengthOfPlace {
  /** What the place is, in words: `cut strands at 8.4 m`. */
  readonly name: string;
  readonly strength: Value;
}

const weakestLink = derivedFrom('weakest-link', 'mechanics: a line in one pull is as strong as its weakest place');

/**
 * The least strength of all places. One place that is unknown makes the least unknown with that place's cause:
 * nobody can say that the unknown one is not the weakest.
 */
export function strengthOfWorstPlace(places: readonly [StrengthOfPlace, ...StrengthOfPlace[]]): Derived {
  const inputs: DerivationInput[] = [];
  for (const [i, { name, strength }] of places.entries()) {
    if (isUnknown(strength)) return strength;
    inputs.push({ symbol: `F_${i + 1}`, meaning: name, given: strength });
  }
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
  } satisfies Derivation;
}

/** Which place is the weakest by its low end; the first of equals. Undefined when one is unknown. */
export function worstPlace<P extends StrengthOfPlace>(places: readonly P[]): P | undefined {
  let worst: P | undefined;
  let least = Infinity;
  for (const place of places) {
    if (isUnknown(place.strength)) return undefined;
    if (place.strength.amount.low < least) {
      worst = place;
      least = place.strength.amount.low;
    }
  }
  return worst;
}
