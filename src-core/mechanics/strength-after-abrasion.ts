import { ownChoice, sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols, loss } from './line-symbols.ts';

export const strengthAfterAbrasion = defineCalculation({
  name: 'strength-after-abrasion',
  means: 'strength left where the line is abraded',
  symbol: 'F',
  kind: 'breaking strength',
  formula: 'F = F_b (1 − a)',
  symbols: { F_b: lineSymbols.F_b, a: loss('share of strand volume lost to abrasion') },
  sources: [ownChoice('strength-follows-volume', 'strength is taken to fall with the strand volume that is gone; no measured relation was found'), sources['ci-2001-04']],
  assumptions: ['what is left of the fibre keeps its strength'],
  compute: ({ F_b, a }) => F_b * (1 - a),
  worked: [],
  noExample: 'no published strength of abraded line was found',
});
