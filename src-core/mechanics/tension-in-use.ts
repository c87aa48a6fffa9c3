import { lesserOfTwo } from '../trade/plan-sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const tensionInUse = defineCalculation({
  name: 'tension-in-use',
  means: 'tension in the line at the winch',
  symbol: 'T',
  kind: 'tension',
  formula: 'T = min(T_n, F_n)',
  symbols: {
    T_n: { meaning: 'pull that the load needs', kind: 'tension', min: 0 },
    F_n: { meaning: 'pull of the winch on the layer in use', kind: 'line pull', min: 0 },
  },
  sources: [lesserOfTwo],
  assumptions: ['the winch is not jerked, and nobody drives against the line'],
  compute: ({ T_n, F_n }) => Math.min(T_n, F_n),
  worked: [],
  noExample: 'the lesser of two pulls; no published example was found',
});
