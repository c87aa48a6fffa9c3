import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const overloadLimit = defineCalculation({
  name: 'overload-limit',
  means: 'pull above which the line is permanently damaged',
  symbol: 'F_o',
  kind: 'working limit',
  formula: 'F_o = o F_b',
  symbols: { F_b: lineSymbols.F_b, o: { meaning: 'share of breaking strength above which a line is permanently damaged', kind: 'share', above: 0, max: 1 } },
  sources: [sources['navedtra-14160-overload']],
  compute: ({ F_b, o }) => F_b * o,
  worked: [],
  noExample: 'the text gives the share and no line worked through',
});
