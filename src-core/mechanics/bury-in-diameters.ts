import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const buryInDiameters = defineCalculation({
  name: 'bury-in-diameters',
  means: 'bury in diameters of the line',
  symbol: 'k',
  kind: 'in diameters',
  formula: 'k = T / d',
  symbols: { T: lineSymbols.T, d: lineSymbols.d },
  sources: [sources['toss-103-105']],
  compute: ({ T, d }) => T / d,
  worked: [{ inputs: { T: '720 mm', d: '10 mm' }, expected: '72 d', tolerance: 1e-9, source: sources['toss-103-105'] }],
});
