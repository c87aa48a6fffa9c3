import { printSource, type Source } from '../trade/source.ts';
import { isRange, type Amount } from '../units/amount.ts';
import { dimensions, kinds, type Dimension, type Kind } from '../units/dimension.ts';
import { printAmount, printNumber, type PrintOptions, type System } from '../units/print.ts';
import { fromSI, type Unit } from '../units/unit-table.ts';
import { restsOnAssumption, type Derivation, type DerivationInput, type Given } from './derivation.ts';
import { putNumbersIn } from './put-numbers-in.ts';

export interface ExplainOptions {
  readonly system?: System | undefined;
  /** Print the derivations of derived inputs first, each once. */
  readonly steps?: boolean;
}

/** An amount as a person reads it. Factors and coefficients keep their digits, where a count of things is whole. */
export function showAmount(amount: Amount, dimension: Dimension, options: PrintOptions = {}): string {
  if (dimension !== 'count' || (Number.isInteger(amount.low) && Number.isInteger(amount.high))) return printAmount(amount, dimension, options);
  const digits = (value: number, careful: PrintOptions['careful']): string => {
    const text = printNumber(value, careful);
    return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  };
  return isRange(amount) ? `${digits(amount.low, 'down')} to ${digits(amount.high, 'up')}` : digits(amount.low, options.careful);
}

/** A share is read in per cent; a ratio of two sizes, or a factor, as a plain number. */
const shownAs = (kind: Kind): Dimension => (kind === 'ratio' ? 'count' : kinds[kind].dimension);

/** All the digits of a number that somebody wrote, free of the noise that converting it brings. */
function showWritten({ low, high }: Amount, unit?: Unit): string {
  const digits = (value: number): string => {
    const text = String(Number((unit === undefined ? value : fromSI(value, unit)).toPrecision(9)));
    return text.includes('e') ? text : printNumber(Number(text), 'nearest', (text.split('.')[1] ?? '').length);
  };
  const symbol = unit === undefined ? '' : ` ${unit.symbol}`;
  return low === high ? `${digits(low)}${symbol}` : `${digits(low)} to ${digits(high)}${symbol}`;
}

/** An input is shown in the unit it was written in, and with the digits it was written with. */
export function showGiven(given: Given, system?: System): string {
  if (given.origin.from === 'written' && given.origin.unit?.dimension === kinds[given.kind].dimension) return showWritten(given.amount, given.origin.unit);
  if (given.origin.from === 'written' && given.origin.unit === undefined && shownAs(given.kind) === 'count') return showWritten(given.amount);
  const careful = given.origin.from === 'derived' ? kinds[given.kind].careful : 'nearest';
  return showAmount(given.amount, shownAs(given.kind), { system, careful });
}

/** A result, rounded to the careful side. */
export const showResult = (derivation: Pick<Derivation, 'amount' | 'kind'>, system?: System): string =>
  showAmount(derivation.amount, shownAs(derivation.kind), { system, careful: kinds[derivation.kind].careful });

/** The formula with the numbers in the place of the symbols, and the result behind it. */
export const numbersPutIn = (derivation: Derivation, options: ExplainOptions = {}): string =>
  putNumbersIn(derivation.formula, new Map(derivation.inputs.map((input) => [input.symbol, { text: showGiven(input.given, options.system), range: isRange(input.given.amount) }])), showResult(derivation, options.system));

interface AssumedValue {
  readonly input: DerivationInput;
  readonly source: Source;
  readonly means: string;
}

/** Every assumed value that the result rests on, however deep, each once. */
export function assumedValues(derivation: Derivation): AssumedValue[] {
  const found = new Map<string, AssumedValue>();
  const seen = new Set<Derivation>();
  const visit = (of: Derivation): void => {
    if (seen.has(of)) return;
    seen.add(of);
    for (const input of of.inputs) {
      const { origin } = input.given;
      if (origin.from === 'assumed') {
        const key = `${input.meaning}\n${origin.means}\n${input.given.amount.low}\n${input.given.amount.high}`;
        if (!found.has(key)) found.set(key, { input, source: origin.source, means: origin.means });
      } else if (origin.from === 'derived') visit(origin.derivation);
    }
  };
  visit(derivation);
  return [...found.values()];
}

/** Every source behind the result, however deep, nearest first, each once. */
export function allSources(derivation: Derivation): Source[] {
  const found = new Map<string, Source>();
  const seen = new Set<Derivation>();
  const add = (source: Source): void => {
    if (!found.has(source.key)) found.set(source.key, source);
  };
  const visit = (of: Derivation): void => {
    if (seen.has(of)) return;
    seen.add(of);
    of.sources.forEach(add);
    for (const { given } of of.inputs) {
      if (given.origin.from === 'assumed' || given.origin.from === 'constant') add(given.origin.source);
      else if (given.origin.from === 'derived') visit(given.origin.derivation);
    }
  };
  visit(derivation);
  return [...found.values()];
}

/** The derivations that this one rests on, deepest first, each once; the derivation itself comes last. */
export function stepsOf(derivation: Derivation): Derivation[] {
  const steps = new Set<Derivation>();
  const visit = (of: Derivation): void => {
    if (steps.has(of)) return;
    for (const { given } of of.inputs) if (given.origin.from === 'derived') visit(given.origin.derivation);
    steps.add(of);
  };
  visit(derivation);
  return [...steps];
}

function printOne(derivation: Derivation, options: ExplainOptions): string[] {
  const { system } = options;
  const lines = [`${derivation.means}: ${derivation.symbol} = ${showResult(derivation, system)}`, `  formula: ${derivation.formula}`, `  numbers: ${numbersPutIn(derivation, options)}`];
  for (const { symbol, meaning, given } of derivation.inputs) lines.push(`  with ${symbol} = ${showGiven(given, system)} — ${meaning} — ${given.origin.from}`);
  for (const { input, source, means } of assumedValues(derivation)) {
    lines.push(`  assumed: ${input.meaning} = ${showGiven(input.given, system)} — ${printSource(source)} — ${means}`);
  }
  for (const assumption of derivation.assumptions) lines.push(`  holds when: ${assumption}`);
  for (const note of derivation.notes) lines.push(`  note: ${note}`);
  for (const source of derivation.sources) lines.push(`  source: ${printSource(source)}`);
  return lines;
}

/** The whole way from inputs to result as lines of text. */
export const printDerivation = (derivation: Derivation, options: ExplainOptions = {}): string[] =>
  options.steps === true ? stepsOf(derivation).flatMap((step) => printOne(step, options)) : printOne(derivation, options);

export type JsonValue = number | { readonly low: number; readonly high: number };
export interface JsonSource {
  readonly key: string;
  readonly title: string;
  readonly trust: string;
}
export interface DerivationJson {
  readonly name: string;
  readonly symbol: string;
  readonly means: string;
  /** SI. */
  readonly value: JsonValue;
  readonly unit: string;
  readonly display: string;
  readonly formula: string;
  readonly numbers: string;
  readonly inputs: readonly {
    readonly symbol: string;
    readonly meaning: string;
    readonly value: JsonValue;
    readonly unit: string;
    readonly display: string;
    readonly origin: Given['origin']['from'];
    readonly source?: JsonSource;
    /** Name of the calculation that the input came out of. */
    readonly calculation?: string;
  }[];
  readonly sources: readonly JsonSource[];
  readonly assumptions: readonly string[];
  readonly notes: readonly string[];
  /** True when the result, or anything it was made of, rests on a value that nobody wrote. */
  readonly assumed: boolean;
}

const jsonValue = ({ low, high }: Amount): JsonValue => (low === high ? low : { low, high });
const jsonSource = ({ key, title, trust }: Source): JsonSource => ({ key, title, trust });

/** The derivation as plain data; values are SI. */
export function derivationToJson(derivation: Derivation, options: ExplainOptions = {}): DerivationJson {
  return {
    name: derivation.calculation,
    symbol: derivation.symbol,
    means: derivation.means,
    value: jsonValue(derivation.amount),
    unit: dimensions[kinds[derivation.kind].dimension].si,
    display: showResult(derivation, options.system),
    formula: derivation.formula,
    numbers: numbersPutIn(derivation, options),
    inputs: derivation.inputs.map(({ symbol, meaning, given }) => ({
      symbol,
      meaning,
      value: jsonValue(given.amount),
      unit: dimensions[kinds[given.kind].dimension].si,
      display: showGiven(given, options.system),
      origin: given.origin.from,
      ...(given.origin.from === 'assumed' || given.origin.from === 'constant' ? { source: jsonSource(given.origin.source) } : {}),
      ...(given.origin.from === 'derived' ? { calculation: given.origin.derivation.calculation } : {}),
    })),
    sources: derivation.sources.map(jsonSource),
    assumptions: derivation.assumptions,
    notes: derivation.notes,
    assumed: derivation.inputs.some((input) => restsOnAssumption(input.given)),
  };
}
