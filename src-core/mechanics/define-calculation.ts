import type { Place } from '../base/span.ts';
import type { Source } from '../trade/source.ts';
import { exactly, type Amount } from '../units/amount.ts';
import { kinds, type Kind } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { isUnknown, unknown, type Derivation, type Derived, type DerivationInput, type Given, type Value } from './derivation.ts';

export interface SymbolDefinition {
  readonly meaning: string;
  readonly kind: Kind;
  /** SI ends of the range in which the calculation may be used; outside it is refused. Both ends are allowed. */
  readonly min?: number;
  readonly max?: number;
  /** The value must be greater than this (SI). */
  readonly above?: number;
  /** SI ends of the range in which the source measured; outside it the result carries a note. */
  readonly measured?: { readonly from?: number; readonly to?: number; readonly note: string };
  /** Must be a whole number. */
  readonly whole?: boolean;
}

/** A result worked by somebody else, as text in the language's own units: `20,000 lbf`. */
export interface WorkedExample {
  readonly inputs: Readonly<Record<string, string>>;
  readonly expected: string;
  /** Largest relative difference that the source's own rounding explains. */
  readonly tolerance: number;
  readonly source: Source;
}

export interface CalculationDefinition<S extends string> {
  /** Kebab-case, says the result: `pull-by-layer`. */
  readonly name: string;
  /** What comes out, in words. */
  readonly means: string;
  readonly symbol: string;
  readonly kind: Kind;
  readonly formula: string;
  readonly symbols: Readonly<Record<S, SymbolDefinition>>;
  readonly sources: readonly [Source, ...Source[]];
  readonly assumptions?: readonly string[];
  /** Conditions between inputs, checked before computing: a sentence when they do not hold. */
  readonly refuse?: (numbers: Readonly<Record<S, number>>) => string | undefined;
  /** Bare SI numbers in, an SI number out (or a range, where the method itself has one). Monotone in every input. */
  readonly compute: (numbers: Readonly<Record<S, number>>) => number | Amount;
  readonly notes?: (numbers: Readonly<Record<S, number>>) => readonly string[];
  /** Worked examples whose numbers come from outside. Empty only with `noExample` saying that none was found. */
  readonly worked: readonly WorkedExample[];
  readonly noExample?: string;
}

export interface Calculation<S extends string = string> extends CalculationDefinition<S> {
  (inputs: Readonly<Record<S, Value>>): Derived;
  readonly calculationName: string;
}

const registry = new Map<string, Calculation>();

/** Every calculation, by name, for `compute` and for the reference. */
export const calculations = (): ReadonlyMap<string, Calculation> => registry;

function outOfRange(symbol: string, definition: SymbolDefinition, given: Given): string | undefined {
  const { low, high } = given.amount;
  // Printing costs more than the calculation itself: only what is refused is printed.
  const shown = (): string => printAmount(given.amount, kinds[definition.kind].dimension, unitOf(given));
  const limit = (si: number): string => printAmount(exactly(si), kinds[definition.kind].dimension, unitOf(given));
  const what = (): string => `${definition.meaning} (${symbol}) is ${shown()}`;
  if (!Number.isFinite(low) || !Number.isFinite(high)) return `${definition.meaning} (${symbol}) is not a finite number`;
  if (definition.above !== undefined && low <= definition.above) return `${what()}; it must be above ${limit(definition.above)}`;
  if (definition.min !== undefined && low < definition.min * (1 - Math.sign(definition.min) * 1e-12)) return `${what()}; the calculation holds from ${limit(definition.min)}`;
  if (definition.max !== undefined && high > definition.max * (1 + Math.sign(definition.max) * 1e-12)) return `${what()}; the calculation holds up to ${limit(definition.max)}`;
  if (definition.whole === true && (!Number.isInteger(low) || !Number.isInteger(high))) return `${what()}; it must be a whole number`;
  return undefined;
}

const unitOf = (given: Given) => (given.origin.from === 'written' ? { unit: given.origin.unit } : {});

/**
 * Turns a record into a calculation that can be called.
 * Any unknown input makes the result unknown with that input's cause; an input outside its range makes it unknown with
 * a sentence; ranges are carried through by computing at every corner.
 */
export function defineCalculation<const S extends string>(definition: CalculationDefinition<S>): Calculation<S> {
  const names = Object.keys(definition.symbols) as S[];

  const calculate = (inputs: Readonly<Record<S, Value>>): Derived => {
    const givens: { name: S; given: Given }[] = [];
    for (const name of names) {
      const value = inputs[name];
      if (isUnknown(value)) return value;
      givens.push({ name, given: value });
    }
    for (const { name, given } of givens) {
      const wrong = outOfRange(name, definition.symbols[name], given);
      if (wrong !== undefined) return refused(definition.name, wrong, given);
    }
    const ranged = givens.filter(({ given }) => given.amount.low !== given.amount.high);
    let low = Infinity;
    let high = -Infinity;
    const notes = new Set<string>();
    for (let corner = 0; corner < 1 << ranged.length; corner++) {
      const numbers = {} as Record<S, number>;
      for (const { name, given } of givens) numbers[name] = given.amount.low;
      ranged.forEach(({ name, given }, i) => {
        if ((corner >> i) & 1) numbers[name] = given.amount.high;
      });
      const wrong = definition.refuse?.(numbers);
      if (wrong !== undefined) return refused(definition.name, wrong, ranged[0]?.given ?? givens[0]?.given);
      const result = definition.compute(numbers);
      const amount = typeof result === 'number' ? exactly(result) : result;
      if (!Number.isFinite(amount.low) || !Number.isFinite(amount.high)) {
        return refused(definition.name, `${definition.means} cannot be computed from these values`, givens[0]?.given);
      }
      low = Math.min(low, amount.low);
      high = Math.max(high, amount.high);
      for (const note of definition.notes?.(numbers) ?? []) notes.add(note);
    }
    for (const { name, given } of givens) {
      const measured = definition.symbols[name].measured;
      if (measured === undefined) continue;
      if ((measured.from !== undefined && given.amount.low < measured.from) || (measured.to !== undefined && given.amount.high > measured.to)) notes.add(measured.note);
    }
    return {
      calculation: definition.name,
      means: definition.means,
      symbol: definition.symbol,
      amount: { low, high },
      kind: definition.kind,
      formula: definition.formula,
      inputs: givens.map(({ name, given }): DerivationInput => ({ symbol: name, meaning: definition.symbols[name].meaning, given })),
      sources: definition.sources,
      assumptions: definition.assumptions ?? [],
      notes: [...notes],
    } satisfies Derivation;
  };

  const { name, ...rest } = definition;
  const calculation = Object.assign(calculate, rest, { calculationName: name }) as unknown as Calculation<S>;
  Object.defineProperty(calculation, 'name', { value: name, enumerable: true });
  registry.set(name, calculation as unknown as Calculation);
  return calculation;
}

function refused(calculation: string, says: string, given: Given | undefined) {
  const place = given === undefined ? undefined : nearestPlace(given);
  return unknown({ key: `${calculation}: ${says}`, says, help: 'correct the value, or ask the maker where the method does not reach', place });
}

function nearestPlace(given: Given): Place | undefined {
  if (given.origin.from === 'written') return given.origin.place;
  if (given.origin.from !== 'derived') return undefined;
  for (const input of given.origin.derivation.inputs) {
    const place = nearestPlace(input.given);
    if (place !== undefined) return place;
  }
  return undefined;
}
