import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols, loss } from './line-symbols.ts';

export const wetStrength = defineCalculation({
  name: 'wet-strength',
  means: 'strength of the wet line',
  symbol: 'F_w',
  kind: 'breaking strength',
  formula: 'F_w = F_b (1 − ω)',
  symbols: { F_b: lineSymbols.F_b, ω: loss('share of strength lost when wet') },
  sources: [sources['ufc-4-159-03-3-7']],
  compute: ({ F_b, ω }) => F_b * (1 - ω),
  worked: [],
  noExample: 'the source gives the share alone; no published strength of one line both dry and wet was found',
});
