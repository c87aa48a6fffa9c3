import { derivedFrom } from '../trade/sources.ts';
import type { Amount } from '../units/amount.ts';
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
  let cause: Cause | undefined;
  let [low, high, known] = [Infinity, Infinity, 0];
  for (const { strength } of places) {
    if (isUnknown(strength)) cause ??= strength.unknown;
    const given = mostOf(strength);
    if (given === undefined) continue;
    known++;
    low = Math.min(low, given.amount.low);
    high = Math.min(high, given.amount.high);
  }
  if (cause === undefined) return new LeastOfPlaces(places, { low, high });
  return unknown(cause, known === 0 ? undefined : mostOf(asGiven(new LeastOfPlaces(places, { low, high }))));
}

/** Of a long logbook hardly anybody asks how the least of hundreds of places came about: that is put into words when it is asked for. */
class LeastOfPlaces implements Derivation {
  readonly calculation = 'strength-of-worst-place';
  readonly means = 'strength at the weakest place';
  readonly symbol = 'F';
  readonly kind = 'breaking strength' as const;
  readonly sources = [weakestLink];
  readonly assumptions = ['the whole line carries the same pull'];
  readonly notes = [];
  readonly amount: Amount;
  readonly #places: readonly StrengthOfPlace[];
  #inputs: DerivationInput[] | undefined;

  constructor(places: readonly StrengthOfPlace[], amount: Amount) {
    this.#places = places;
    this.amount = amount;
  }

  get inputs(): readonly DerivationInput[] {
    this.#inputs ??= this.#places.flatMap(({ name, strength }) => {
      const given = mostOf(strength);
      return given === undefined ? [] : [{ meaning: name, given }];
    }).map((input, i) => ({ symbol: `F_${i + 1}`, ...input }));
    return this.#inputs;
  }

  get formula(): string {
    return this.inputs.length === 1 ? 'F = F_1' : `F = min(${this.inputs.map((input) => input.symbol).join(', ')})`;
  }
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
