import type { Source } from '../trade/source.ts';
import { kinds } from '../units/dimension.ts';
import type { Calculation, WorkedExample } from './define-calculation.ts';
import { isUnknown, type Given } from './derivation.ts';
import { showAmount } from './explain.ts';
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
  const unit = expected.origin.from === 'written' ? expected.origin.unit : undefined;
  const dimension = kinds[calculation.kind].dimension;
  return {
    calculation: calculation.calculationName,
    source: example.source,
    expected: example.expected,
    got: unit === undefined ? showAmount(got.amount, calculation.kind === 'ratio' ? 'count' : dimension, { careful: 'nearest' }) : showAmount(got.amount, dimension, { unit, careful: 'nearest' }),
    difference,
    within: difference <= example.tolerance,
  };
}
