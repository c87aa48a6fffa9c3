import type { Source } from '../trade/source.ts';
import { isRange, type Amount } from '../units/amount.ts';
import { kinds } from '../units/dimension.ts';
import { parseAmount } from '../units/parse-quantity.ts';
import { printNumber } from '../units/print.ts';
import { fromSI, standardGravity, type Unit } from '../units/unit-table.ts';
import type { Calculation, WorkedExample } from './define-calculation.ts';
import { isUnknown, type Given } from './derivation.ts';
import { readInput } from './read-input.ts';

/** What came out of working an example that somebody else worked before. */
export interface WorkedCheck {
  readonly calculation: string;
  readonly source: Source;
  readonly expected: string;
  readonly got: string;
  /** Largest relative difference of the two ends; undefined when nothing came out. */
  readonly difference: number | undefined;
  readonly within: boolean;
}

const relative = (got: number, expected: number): number => (got === expected ? 0 : Math.abs(got - expected) / Math.abs(expected));

/** The result in the unit that the source wrote, a load written as a mass included. */
function likeWritten(amount: Amount, expected: string, kind: Calculation['kind']): string {
  const written = parseAmount(expected);
  if (typeof written === 'string') return toFiveDigits(amount, undefined);
  const asMass = written.dimension === 'mass' && kinds[kind].dimension === 'force';
  return toFiveDigits(asMass ? { low: amount.low / standardGravity, high: amount.high / standardGravity } : amount, written.unit);
}

/** Five digits, so that a small difference from a published figure can be seen. */
function toFiveDigits(amount: Amount, unit: Unit | undefined): string {
  const digits = (si: number): string => {
    const value = Number((unit === undefined ? si : fromSI(si, unit)).toPrecision(5));
    return printNumber(value, 'nearest', Math.min(12, (String(value).split('.')[1] ?? '').length));
  };
  const numbers = isRange(amount) && digits(amount.low) !== digits(amount.high) ? `${digits(amount.low)} to ${digits(amount.high)}` : digits(amount.low);
  return unit === undefined ? numbers : `${numbers} ${unit.symbol}`;
}

export function checkWorkedExample(calculation: Calculation, example: WorkedExample): WorkedCheck {
  const failed = (got: string): WorkedCheck => ({ calculation: calculation.calculationName, source: example.source, expected: example.expected, got, difference: undefined, within: false });
  const inputs: Record<string, Given> = {};
  for (const [symbol, definition] of Object.entries(calculation.symbols)) {
    const text = example.inputs[symbol];
    if (text === undefined) return failed(`the example gives no ${symbol}`);
    const given = readInput(symbol, definition, text);
    if (typeof given === 'string') return failed(given);
    inputs[symbol] = given;
  }
  const surplus = Object.keys(example.inputs).find((symbol) => !Object.hasOwn(calculation.symbols, symbol));
  if (surplus !== undefined) return failed(`the calculation has no ${surplus}`);
  const expected = readInput(calculation.symbol, { kind: calculation.kind, meaning: calculation.means }, example.expected);
  if (typeof expected === 'string') return failed(expected);
  const got = calculation(inputs);
  if (isUnknown(got)) return failed(got.unknown.says);
  const difference = Math.max(relative(got.amount.low, expected.amount.low), relative(got.amount.high, expected.amount.high));
  return {
    calculation: calculation.calculationName,
    source: example.source,
    expected: example.expected,
    got: likeWritten(got.amount, example.expected, calculation.kind),
    difference,
    within: difference <= example.tolerance,
  };
}
