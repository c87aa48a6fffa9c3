import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const tensionInPart = defineCalculation({
  name: 'tension-in-part',
  means: 'tension in this part of the line',
  symbol: 'T_i',
  kind: 'tension',
  formula: 'T_i = s T',
  symbols: {
    s: { meaning: 'share of the tension that is left behind the blocks before it', kind: 'share', above: 0, max: 1 },
    T: { meaning: 'tension in the line at the winch', kind: 'tension', min: 0 },
  },
  sources: [sources.statics, sources['sheave-loss-plain']],
  compute: ({ s, T }) => s * T,
  worked: [],
  noExample: 'a product of two numbers; the losses behind it are checked as the advantage of a tackle',
});
