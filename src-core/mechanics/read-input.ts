import type { Place } from '../base/span.ts';
import { between } from '../units/amount.ts';
import { kinds, type Dimension } from '../units/dimension.ts';
import { parseAmount } from '../units/parse-quantity.ts';
import { describeDimension } from '../units/read-quantity.ts';
import { standardGravity } from '../units/unit-table.ts';
import type { SymbolDefinition } from './define-calculation.ts';
import type { Given } from './derivation.ts';
import { exampleInput } from './example-input.ts';

const bare = (dimension: Dimension): string => describeDimension(dimension).split(', such as')[0]!;

/** Where a value that was asked alone stands: in no file. */
const askedAlone: Place = { chunk: {}, start: 0, end: 0 };

/**
 * Reads the text of one input of a calculation, such as `20,000 lbf` or `15 to 25 %`.
 * A mass written where a force is meant is taken by standard gravity, as on tags and rating plates.
 * Gives a sentence when the text is no quantity, or one of another measure.
 */
export function readInput(symbol: string, definition: Pick<SymbolDefinition, 'kind' | 'meaning'>, text: string, place: Place = askedAlone): Given | string {
  const read = parseAmount(text);
  if (typeof read === 'string') return `${symbol}: ${read}`;
  const wanted = kinds[definition.kind].dimension;
  const weight = wanted === 'force' && read.dimension === 'mass';
  // A share or a ratio is a number, so 0.3 says the same as 30 %.
  const plain = wanted === 'ratio' && read.dimension === 'count';
  if (read.dimension !== wanted && !weight && !plain) return `${symbol} (${definition.meaning}) is ${bare(wanted)}, such as ${exampleInput(definition)}; \`${text}\` is ${bare(read.dimension)}`;
  const factor = weight ? standardGravity : 1;
  return {
    amount: between(read.amount.low * factor, read.amount.high * factor),
    kind: definition.kind,
    origin: { from: 'written', place, ...(read.unit === undefined || weight ? {} : { unit: read.unit }) },
  };
}

const latin: Readonly<Record<string, string>> = {
  α: 'alpha', β: 'beta', η: 'eta', θ: 'theta', λ: 'lambda', μ: 'mu', σ: 'sigma', τ: 'tau', φ: 'phi', ω: 'omega', ρ: 'rho', π: 'pi', γ: 'gamma', δ: 'delta', ε: 'epsilon',
};

/** A symbol as it can be typed on any keyboard: `mu` for `μ`, `T_2` for `T₂`. */
export const typedSymbol = (symbol: string): string =>
  symbol.replace(/[α-ω]/g, (letter) => latin[letter] ?? letter).replace(/[₀-₉]+/g, (digits) => '_' + [...digits].map((digit) => String(digit.charCodeAt(0) - 0x2080)).join(''));
