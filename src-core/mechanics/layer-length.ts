import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const layerLength = defineCalculation({
  name: 'layer-length',
  means: 'length of line on the layer',
  symbol: 'L_n',
  kind: 'length',
  formula: 'L_n = π w (B + (2n − 1) d)',
  symbols: { w: drumSymbols.w, B: drumSymbols.B, d: drumSymbols.d, n: drumSymbols.n },
  sources: [sources.geometry],
  assumptions: [stacking],
  compute: ({ w, B, d, n }) => Math.PI * w * layerDiameter_m(n, B, d),
  worked: [],
  noExample: 'no published length of a single layer was found; the sum over layers is checked against the handbook capacity',
});
