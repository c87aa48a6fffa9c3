import type { Place } from '../base/span.ts';
import type { Source } from '../trade/source.ts';
import { exactly, type Amount } from '../units/amount.ts';
import { kinds, type Kind } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { showGiven } from './explain.ts';
import { asGiven, isUnknown, mostOf, unknown, type Cause, type Derivation, type Derived, type DerivationInput, type Given, type Value } from './derivation.ts';

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
  /** The result rises and falls with it: what it is at most tells what the result is at most. */
  readonly carries?: true;
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
  const { above, min, max, whole } = definition;
  if (!Number.isFinite(low) || !Number.isFinite(high)) return `${definition.meaning} (${symbol}) is not a finite number`;
  if (above !== undefined && low <= above) return saysOutOfRange(symbol, definition, given, 'it must be above', above);
  if (min !== undefined && low < min * (1 - Math.sign(min) * 1e-12)) return saysOutOfRange(symbol, definition, given, 'the calculation holds from', min);
  if (max !== undefined && high > max * (1 + Math.sign(max) * 1e-12)) return saysOutOfRange(symbol, definition, given, 'the calculation holds up to', max);
  if (whole === true && (!Number.isInteger(low) || !Number.isInteger(high))) return saysOutOfRange(symbol, definition, given, 'it must be a whole number');
  return undefined;
}

function saysOutOfRange(symbol: string, { meaning, kind }: SymbolDefinition, given: Given, must: string, limit?: number): string {
  const print = (amount: Amount): string => printAmount(amount, kinds[kind].dimension, unitOf(given));
  // Rounded, a number that is out of range may look as if it were not.
  const shown = given.origin.from === 'written' ? showGiven(given) : print(given.amount);
  return `${meaning} (${symbol}) is ${shown}; ${must}${limit === undefined ? '' : ` ${print(exactly(limit))}`}`;
}

/** The ends between which a number needs no further look (SI): where it lies outside, `outOfRange` says what is wrong, if anything is. */
function plainEnds({ above, min, max, whole }: SymbolDefinition): readonly [from: number, to: number] {
  if (whole === true) return [Infinity, -Infinity];
  return [Math.max(min ?? -Number.MAX_VALUE, above === undefined ? -Number.MAX_VALUE : above + Math.abs(above) * 1e-12 + Number.MIN_VALUE), max ?? Number.MAX_VALUE];
}

const unitOf = (given: Given) => (given.origin.from === 'written' ? { unit: given.origin.unit } : {});

const none: readonly never[] = [];

/** What a calculation gave. There are many of these, so what all of one calculation share is looked up in its definition. */
class Worked implements Derivation {
  readonly #definition: CalculationDefinition<string>;
  readonly #symbols: readonly string[];
  readonly #givens: readonly Given[];
  readonly amount: Amount;
  readonly notes: readonly string[];

  constructor(definition: CalculationDefinition<string>, symbols: readonly string[], givens: readonly Given[], amount: Amount, notes: readonly string[]) {
    this.#definition = definition;
    this.#symbols = symbols;
    this.#givens = givens;
    this.amount = amount;
    this.notes = notes;
  }

  get calculation(): string {
    return this.#definition.name;
  }

  get means(): string {
    return this.#definition.means;
  }

  get symbol(): string {
    return this.#definition.symbol;
  }

  get kind(): Kind {
    return this.#definition.kind;
  }

  get formula(): string {
    return this.#definition.formula;
  }

  get inputs(): readonly DerivationInput[] {
    return this.#givens.map((given, i) => ({ symbol: this.#symbols[i]!, meaning: this.#definition.symbols[this.#symbols[i]!]!.meaning, given }));
  }

  get sources(): readonly Source[] {
    return this.#definition.sources;
  }

  get assumptions(): readonly string[] {
    return this.#definition.assumptions ?? none;
  }
}

/**
 * Turns a record into a calculation that can be called.
 * Any unknown input makes the result unknown with that input's cause; an input outside its range makes it unknown with
 * a sentence; ranges are carried through by computing at every corner.
 */
export function defineCalculation<const S extends string>(definition: CalculationDefinition<S>): Calculation<S> {
  const names = Object.keys(definition.symbols) as S[];
  const symbols = names.map((name) => definition.symbols[name]);
  const plain = symbols.map(plainEnds);
  const measuredOnly = symbols.some(({ measured }) => measured !== undefined);

  const calculate = (inputs: Readonly<Record<S, Value>>): Derived => {
    const count = names.length;
    const givens = new Array<Given>(count);
    for (let i = 0; i < count; i++) {
      const value = inputs[names[i]!];
      if (isUnknown(value)) return symbols[i]!.carries === true && value.atMost !== undefined ? atMost(inputs, names[i]!, value.unknown, value.atMost) : value.atMost === undefined ? value : unknown(value.unknown);
      givens[i] = value;
    }
    let ranged: number[] | undefined;
    for (let i = 0; i < count; i++) {
      const { low, high } = givens[i]!.amount;
      const ends = plain[i]!;
      if (!(ends[0] <= low && high <= ends[1])) {
        const wrong = outOfRange(names[i]!, symbols[i]!, givens[i]!);
        if (wrong !== undefined) return refused(definition.name, wrong, givens[i]);
      }
      if (low !== high) (ranged ??= []).push(i);
    }
    let low = Infinity;
    let high = -Infinity;
    let notes: Set<string> | undefined;
    const corners = ranged === undefined ? 1 : 1 << ranged.length;
    for (let corner = 0; corner < corners; corner++) {
      const numbers = {} as Record<S, number>;
      for (let i = 0; i < count; i++) numbers[names[i]!] = givens[i]!.amount.low;
      if (ranged !== undefined) for (let i = 0; i < ranged.length; i++) if ((corner >> i) & 1) numbers[names[ranged[i]!]!] = givens[ranged[i]!]!.amount.high;
      const wrong = definition.refuse?.(numbers);
      if (wrong !== undefined) return refused(definition.name, wrong, givens[ranged?.[0] ?? 0]);
      const result = definition.compute(numbers);
      const least = typeof result === 'number' ? result : result.low;
      const most = typeof result === 'number' ? result : result.high;
      if (!Number.isFinite(least) || !Number.isFinite(most)) return refused(definition.name, `${definition.means} cannot be computed from these values`, givens[0]);
      low = Math.min(low, least);
      high = Math.max(high, most);
      if (definition.notes !== undefined) for (const note of definition.notes(numbers)) (notes ??= new Set()).add(note);
    }
    for (let i = 0; measuredOnly && i < count; i++) {
      const { measured } = symbols[i]!;
      if (measured === undefined) continue;
      const { amount } = givens[i]!;
      if ((measured.from !== undefined && amount.low < measured.from) || (measured.to !== undefined && amount.high > measured.to)) (notes ??= new Set()).add(measured.note);
    }
    return new Worked(definition as unknown as CalculationDefinition<string>, names, givens, { low, high }, notes === undefined ? none : [...notes]);
  };

  const atMost = (inputs: Readonly<Record<S, Value>>, symbol: S, cause: Cause, bound: Given): Derived => unknown(cause, mostOf(asGiven(calculate({ ...inputs, [symbol]: bound }))));

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
