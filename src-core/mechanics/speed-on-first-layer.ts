import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

/** For winches whose speed is given for another layer than the first. */
export const speedOnFirstLayer = defineCalculation({
  name: 'speed-on-first-layer',
  means: 'line speed on the first layer',
  symbol: 'v_1',
  kind: 'speed',
  formula: 'v_1 = v_r (B + d) / (B + (2r − 1) d)',
  symbols: {
    v_r: { meaning: 'line speed that is given', kind: 'speed', above: 0, max: 100 },
    r: { ...drumSymbols.n, meaning: 'layer for which it is given' },
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources.geometry],
  assumptions: ['the drum turns at the same rate on every layer', stacking],
  compute: ({ v_r, r, B, d }) => (v_r * (B + d)) / layerDiameter_m(r, B, d),
  worked: [],
  noExample: 'no published speed by layer at one drum rate was found',
});
