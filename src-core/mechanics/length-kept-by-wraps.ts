import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lengthOfWraps_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const lengthKeptByWraps = defineCalculation({
  name: 'length-kept-by-wraps',
  means: 'length of line in the kept wraps',
  symbol: 'K',
  kind: 'needed length',
  formula: 'K = π (w q (B + q d) + (k − q w) (B + (2q + 1) d)), q = ⌊k / w⌋',
  symbols: {
    k: { meaning: 'wraps kept', kind: 'needed count', min: 0, max: 10_000 },
    w: drumSymbols.w,
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources.geometry],
  assumptions: ['the kept wraps fill the first layer before they rise to the second', stacking],
  compute: ({ k, w, B, d }) => lengthOfWraps_m(k, w, B, d),
  worked: [],
  noExample: 'no published length of the kept wraps was found',
});
