import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const bendRatio = defineCalculation({
  name: 'bend-ratio',
  means: 'bend ratio of the line over what it bears on',
  symbol: 'R',
  kind: 'count',
  formula: 'R = D ÷ d',
  symbols: {
    D: { meaning: 'diameter of the pin, thimble, sheave or rope that the line bears on', kind: 'diameter', above: 0 },
    d: { meaning: 'diameter of the line', kind: 'diameter', above: 0 },
  },
  sources: [sources['hoist-manual-table-b']],
  compute: ({ D, d }) => D / d,
  worked: [],
  noExample: 'the table begins with the ratio and gives no sheave and rope to divide',
});
