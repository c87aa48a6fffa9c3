import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lengthThrough_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

/** Cumulative length: the sum of the layer lengths up to and including layer n. */
export const lengthThroughLayer = defineCalculation({
  name: 'length-through-layer',
  means: 'length of line on the layers up to this one',
  symbol: 'L_1..n',
  kind: 'length',
  formula: 'L_1..n = π w n (B + n d)',
  symbols: { w: drumSymbols.w, B: drumSymbols.B, d: drumSymbols.d, n: drumSymbols.n },
  sources: [sources.geometry, sources['oceanographic-handbook-12-5']],
  assumptions: [stacking],
  compute: ({ w, B, d, n }) => lengthThrough_m(n, w, B, d),
  worked: [],
  noExample: 'no published cumulative length by layer was found; it equals the handbook capacity with W = w d and h = n d',
});
