import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const strengthOfKnot = defineCalculation({
  name: 'strength-of-knot',
  means: 'strength of the knotted end',
  symbol: 'F_k',
  kind: 'breaking strength',
  formula: 'F_k = F_b k',
  symbols: { F_b: lineSymbols.F_b, k: { meaning: 'share of strength at which the knot slips or the line breaks in it', kind: 'share', above: 0, max: 1 } },
  sources: [sources['hmpe-knot-tests'], sources['ci-1401-15']],
  compute: ({ F_b, k }) => F_b * k,
  worked: [],
  noExample: 'the sources give the share alone',
});
