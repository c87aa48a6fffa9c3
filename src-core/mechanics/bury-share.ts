import { ownChoice } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const buryShare = defineCalculation({
  name: 'bury-share',
  means: 'share at which a short bury is counted',
  symbol: 'p',
  kind: 'share',
  formula: 'p = min(1, T / T_0)',
  symbols: { T: lineSymbols.T, T_0: { meaning: 'needed bury', kind: 'needed length', above: 0, max: 1000 } },
  sources: [ownChoice('short-bury-counted', 'a short bury is counted by its share of the needed one; no measured relation was found')],
  compute: ({ T, T_0 }) => Math.min(1, T / T_0),
  worked: [],
  noExample: 'no published strength of a short bury in HMPE was found that states the needed one',
});
