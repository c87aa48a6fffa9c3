import { layerPullTable } from '../trade/layer-pull-table.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

const tm = sources['tm-9-2320-430-10'];

/** For winches that are rated on another layer than the first. */
export const pullOnFirstLayer = defineCalculation({
  name: 'pull-on-first-layer',
  means: 'line pull on the first layer',
  symbol: 'F_1',
  kind: 'line pull',
  formula: 'F_1 = F_r (B + (2r − 1) d) / (B + d)',
  symbols: {
    F_r: { meaning: 'rated line pull', kind: 'line pull', above: 0, max: 1e8 },
    r: { ...drumSymbols.n, meaning: 'layer on which the winch is rated' },
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources['sae-j706'], tm],
  assumptions: ['the drum torque is the same on every layer', stacking],
  compute: ({ F_r, r, B, d }) => (F_r * layerDiameter_m(r, B, d)) / (B + d),
  worked: [
    { inputs: { F_r: '18,173 lbf', r: '2', B: '1.89935 m', d: '0.10065 m' }, expected: '20,000 lbf', tolerance: layerPullTable.tolerance, source: tm },
    { inputs: { F_r: '16,663 lbf', r: '3', B: '1.89935 m', d: '0.10065 m' }, expected: '20,000 lbf', tolerance: layerPullTable.tolerance, source: tm },
  ],
});
