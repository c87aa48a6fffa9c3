import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const drumCapacityHandbook = defineCalculation({
  name: 'drum-capacity-handbook',
  means: 'length of line on a drum filled to this depth',
  symbol: 'L',
  kind: 'usable length',
  formula: 'L = π W h (B + h) / d²; in the source, with sizes in inches, L[ft] = 0.2618 W h (B + h) / d²',
  symbols: {
    W: drumSymbols.W,
    h: { meaning: 'depth of line on the drum, from the barrel outward', kind: 'length', above: 0, max: 10 },
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources['oceanographic-handbook-12-5']],
  assumptions: [stacking, 'part wraps and part layers are counted'],
  compute: ({ W, h, B, d }) => (Math.PI * W * h * (B + h)) / d ** 2,
  worked: [
    {
      inputs: { W: '60 mm', h: '41.66870 mm', B: '50 mm', d: '6 mm' },
      expected: '20 m',
      tolerance: 1e-5,
      source: sources['exercise-winch-8298'],
    },
  ],
});
