import type { Place } from '../base/span.ts';
import type { Amount } from '../units/amount.ts';
import { kinds, type Careful, type Dimension, type Kind } from '../units/dimension.ts';
import type { Unit } from '../units/unit-table.ts';
import type { Source } from '../trade/source.ts';

/** Why a value cannot be known. Two unknowns with the same `key` have one and the same cause. */
export interface Cause {
  /** Identity of the cause, for example `breaking of tail`. */
  readonly key: string;
  /** One clause: what is missing or wrong, `breaking strength of \`tail\` is not given`. */
  readonly says: string;
  /** The cheapest honest way to make it known. */
  readonly help: string;
  /** Where it could be written, or where the damage stands. */
  readonly place?: Place | undefined;
  /** True when a finding of its own already stands at the place, or a paper has somebody look: then it is counted, and nothing new is said. */
  readonly reported?: boolean;
}

/** Where a value came from. */
export type Origin =
  | { readonly from: 'written'; readonly place: Place; readonly unit?: Unit | undefined }
  /** A value of practice or of a table: nobody wrote it in the file. `means` says how to replace it. */
  | { readonly from: 'assumed'; readonly source: Source; readonly means: string; readonly place?: Place | undefined }
  | { readonly from: 'derived'; readonly derivation: Derivation }
  | { readonly from: 'constant'; readonly source: Source };

/** A known value with its origin: what calculations take. */
export interface Given {
  readonly amount: Amount;
  readonly kind: Kind;
  readonly origin: Origin;
}

export interface Unknown {
  readonly unknown: Cause;
  /** It is no more than this, whatever it is: enough for a check to fail, never for one to hold. */
  readonly atMost?: Given;
}

/** A value, or the cause why there is none. Never zero for unknown, never a silent default. */
export type Known<T> = T | Unknown;
export type Value = Known<Given>;

export const unknown = (cause: Cause, atMost?: Given): Unknown => (atMost === undefined ? { unknown: cause } : { unknown: cause, atMost });
export const isUnknown = (value: object | undefined): value is Unknown => value !== undefined && 'unknown' in value && value.unknown !== undefined;

/** A value, or what an unknown one is at most. */
export const mostOf = (value: Value): Given | undefined => (isUnknown(value) ? value.atMost : value);

/** An unknown value that is no more than this either; a known one stays as it is. */
export function noMoreThan(value: Value, bound: Given | undefined): Value {
  if (!isUnknown(value) || bound === undefined) return value;
  return value.atMost !== undefined && value.atMost.amount.low <= bound.amount.low ? value : unknown(value.unknown, bound);
}

/** The lower of two, the first of equals; unknown when either is, and then no more than the other. */
export function lowerOf(a: Value, b: Value): Value {
  if (isUnknown(a)) return noMoreThan(a, mostOf(b));
  if (isUnknown(b)) return noMoreThan(b, a);
  return a.amount.low <= b.amount.low ? a : b;
}

export interface DerivationInput {
  readonly symbol: string;
  readonly meaning: string;
  readonly given: Given;
}

/** How a value came about, ready to be shown anywhere. Never copied part by part (`{ ...derivation }`): most of it may not be its own. */
export interface Derivation {
  /** Name of the calculation, as `compute` knows it. */
  readonly calculation: string;
  /** What came out, in words: `line pull on the layer`. */
  readonly means: string;
  /** Symbol of the result in the formula. */
  readonly symbol: string;
  readonly amount: Amount;
  readonly kind: Kind;
  /** In the source's own symbols. */
  readonly formula: string;
  readonly inputs: readonly DerivationInput[];
  readonly sources: readonly Source[];
  readonly assumptions: readonly string[];
  /** Sentences on this very result: an input outside the range in which the source was measured, a limit reached. */
  readonly notes: readonly string[];
}

/** A derived value or the cause why there is none. */
export type Derived = Known<Derivation>;

export const dimensionOf = (kind: Kind): Dimension => kinds[kind].dimension;
export const carefulOf = (kind: Kind): Careful => kinds[kind].careful;

/** A derivation as the input of a further calculation, under another kind where a reason for that stands in the caller. */
export const asGiven = (derived: Derived, kind?: Kind): Value =>
  isUnknown(derived) ? derived : { amount: derived.amount, kind: kind ?? derived.kind, origin: { from: 'derived', derivation: derived } };

/** True when the value, or anything it was made of, was assumed and not written. */
export function restsOnAssumption(given: Given): boolean {
  if (given.origin.from === 'assumed') return true;
  return given.origin.from === 'derived' && given.origin.derivation.inputs.some((input) => restsOnAssumption(input.given));
}

export interface WrittenInput {
  readonly place: Place;
  /** What the figure is. */
  readonly means: string;
}

/** Every written figure that fed the value, nearest first, each place once. */
export function writtenInputs(value: Given | Derivation): WrittenInput[] {
  const found = new Map<Place, WrittenInput>();
  const seen = new Set<Derivation>();
  const visit = (given: Given, means: string): void => {
    const { origin } = given;
    if (origin.from === 'derived') walk(origin.derivation);
    else if (origin.from !== 'constant' && origin.place !== undefined && !found.has(origin.place)) found.set(origin.place, { place: origin.place, means });
  };
  const walk = (derivation: Derivation): void => {
    if (seen.has(derivation)) return;
    seen.add(derivation);
    for (const input of derivation.inputs) visit(input.given, input.meaning);
  };
  if ('calculation' in value) walk(value);
  else visit(value, value.kind);
  return [...found.values()];
}

/** The places of `writtenInputs`. */
export const writtenPlaces = (value: Given | Derivation): Place[] => writtenInputs(value).map((input) => input.place);
