import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const speedByLayer = defineCalculation({
  name: 'speed-by-layer',
  means: 'line speed on the layer',
  symbol: 'v_n',
  kind: 'speed',
  formula: 'v_n = v_1 (B + (2n − 1) d) / (B + d)',
  symbols: { v_1: { meaning: 'line speed on the first layer', kind: 'speed', above: 0, max: 100 }, B: drumSymbols.B, d: drumSymbols.d, n: drumSymbols.n },
  sources: [sources.geometry],
  assumptions: ['the drum turns at the same rate on every layer', stacking],
  compute: ({ v_1, B, d, n }) => (v_1 * layerDiameter_m(n, B, d)) / (B + d),
  worked: [],
  noExample: 'no published speed by layer at one drum rate was found',
});
