import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const drumCapacityWithFill = defineCalculation({
  name: 'drum-capacity-with-fill',
  means: 'length of line that the drum takes in practice',
  symbol: 'L_φ',
  kind: 'usable length',
  formula: 'L_φ = φ π W h (B + h) / d²',
  symbols: {
    φ: { meaning: 'fill factor, share of the computed capacity that line really fills', kind: 'share', above: 0, max: 1 },
    W: drumSymbols.W,
    h: { meaning: 'depth of line on the drum, from the barrel outward', kind: 'length', above: 0, max: 10 },
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources['oceanographic-handbook-12-5'], sources['sae-j706-2017-fill']],
  assumptions: [stacking, 'part wraps and part layers are counted'],
  compute: ({ φ, W, h, B, d }) => (φ * Math.PI * W * h * (B + h)) / d ** 2,
  worked: [],
  noExample: 'no published capacity with a stated fill factor was found',
});
