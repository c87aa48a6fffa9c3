import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const lineNeededForFinishedLength = defineCalculation({
  name: 'line-needed-for-finished-length',
  means: 'length of line to start with',
  symbol: 'L_0',
  kind: 'needed length',
  formula: 'L_0 = L_f + U_1 + U_2',
  symbols: {
    L_f: { meaning: 'wanted finished length', kind: 'length', above: 0, max: 100_000 },
    U_1: { meaning: 'line that the splice at one end uses', kind: 'needed length', min: 0, max: 1000 },
    U_2: { meaning: 'line that the splice at the other end uses', kind: 'needed length', min: 0, max: 1000 },
  },
  sources: [sources['lengths-add']],
  compute: ({ L_f, U_1, U_2 }) => L_f + U_1 + U_2,
  worked: [],
  noExample: 'a sum of lengths; no published example was found',
});
