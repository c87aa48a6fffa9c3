import { layerPullTable } from '../trade/layer-pull-table.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

const tm = sources['tm-9-2320-430-10'];
// The table gives no drum sizes. Line of 0.10065 and a barrel of 1.89935 have the published ratio 2 d / (B + d) = 0.10065.
const drum = { B: '1.89935 m', d: '0.10065 m' };

export const pullByLayer = defineCalculation({
  name: 'pull-by-layer',
  means: 'line pull on the layer',
  symbol: 'F_n',
  kind: 'line pull',
  formula: 'F_n = F_1 (B + d) / (B + (2n − 1) d)',
  symbols: { F_1: drumSymbols.F_1, B: drumSymbols.B, d: drumSymbols.d, n: drumSymbols.n },
  sources: [sources['sae-j706'], tm],
  assumptions: ['the drum torque is the same on every layer', stacking],
  compute: ({ F_1, B, d, n }) => (F_1 * (B + d)) / layerDiameter_m(n, B, d),
  worked: [
    { inputs: { F_1: '20,000 lbf', ...drum, n: '1' }, expected: '20,000 lbf', tolerance: layerPullTable.tolerance, source: tm },
    { inputs: { F_1: '20,000 lbf', ...drum, n: '2' }, expected: '18,173 lbf', tolerance: layerPullTable.tolerance, source: tm },
    { inputs: { F_1: '20,000 lbf', ...drum, n: '3' }, expected: '16,663 lbf', tolerance: layerPullTable.tolerance, source: tm },
    { inputs: { F_1: '20,000 lbf', ...drum, n: '4' }, expected: '15,361 lbf', tolerance: layerPullTable.tolerance, source: tm },
    { inputs: { F_1: '20,000 lbf', ...drum, n: '5' }, expected: '14,254 lbf', tolerance: layerPullTable.tolerance, source: tm },
  ],
});
