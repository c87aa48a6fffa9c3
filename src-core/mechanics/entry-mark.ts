import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const entryMark = defineCalculation({
  name: 'entry-mark',
  means: 'mark from the tail end at which the tail enters the standing part',
  symbol: 'm_entry',
  kind: 'length',
  formula: 'm_entry = T + E',
  symbols: { T: lineSymbols.T, E: lineSymbols.E },
  sources: [sources['lengths-add']],
  compute: ({ T, E }) => T + E,
  worked: [],
  noExample: 'a sum of two lengths; no published example was found',
});
