import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lengthThrough_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const lengthOnPartialLayer = defineCalculation({
  name: 'length-on-partial-layer',
  means: 'length of line on the outermost layer',
  symbol: 'L_p',
  kind: 'length',
  formula: 'L_p = L − π w (n − 1) (B + (n − 1) d)',
  symbols: { L: drumSymbols.L, w: drumSymbols.w, B: drumSymbols.B, d: drumSymbols.d, n: { ...drumSymbols.n, meaning: 'outermost layer' } },
  sources: [sources.geometry],
  assumptions: [stacking],
  refuse: ({ L, w, B, d, n }) => (L < lengthThrough_m(n - 1, w, B, d) * (1 - 1e-12) ? 'the line ends on a layer below this one' : undefined),
  compute: ({ L, w, B, d, n }) => Math.max(0, L - lengthThrough_m(n - 1, w, B, d)),
  worked: [],
  noExample: 'no published length on a part-filled layer was found',
});
