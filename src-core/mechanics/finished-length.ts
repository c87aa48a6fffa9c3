import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const finishedLength = defineCalculation({
  name: 'finished-length',
  means: 'finished length, bearing point to bearing point',
  symbol: 'L_f',
  kind: 'usable length',
  formula: 'L_f = L_0 − U_1 − U_2',
  symbols: {
    L_0: { meaning: 'length of line to start with', kind: 'length', above: 0, max: 100_000 },
    U_1: { meaning: 'line that the splice at one end uses', kind: 'needed length', min: 0, max: 1000 },
    U_2: { meaning: 'line that the splice at the other end uses', kind: 'needed length', min: 0, max: 1000 },
  },
  sources: [sources['lengths-add']],
  refuse: ({ L_0, U_1, U_2 }) => (U_1 + U_2 >= L_0 ? 'the splices use up the whole line' : undefined),
  compute: ({ L_0, U_1, U_2 }) => L_0 - U_1 - U_2,
  worked: [],
  noExample: 'a difference of lengths; no published example was found',
});
