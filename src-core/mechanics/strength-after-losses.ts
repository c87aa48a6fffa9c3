import { ownChoice } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols, loss } from './line-symbols.ts';

/** For two kinds of damage in the same place. */
export const strengthAfterLosses = defineCalculation({
  name: 'strength-after-losses',
  means: 'strength left where two losses meet',
  symbol: 'F',
  kind: 'breaking strength',
  formula: 'F = F_b (1 − s_1 − s_2), nothing when the losses add up to the whole',
  symbols: { F_b: lineSymbols.F_b, s_1: loss('share lost to one damage'), s_2: loss('share lost to the other damage') },
  sources: [ownChoice('losses-add', 'losses in one place are added, since nobody knows that they hit the same strands')],
  compute: ({ F_b, s_1, s_2 }) => F_b * Math.max(0, 1 - s_1 - s_2),
  worked: [],
  noExample: 'no published strength of line with two damages in one place was found',
});
