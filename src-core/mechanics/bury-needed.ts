import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const buryNeeded = defineCalculation({
  name: 'bury-needed',
  means: 'needed bury',
  symbol: 'T_0',
  kind: 'needed length',
  formula: 'T_0 = k d',
  symbols: { k: { meaning: 'needed bury in diameters, taper included', kind: 'needed diameters', above: 0, max: 1000 }, d: lineSymbols.d },
  sources: [sources['toss-103-105']],
  compute: ({ k, d }) => k * d,
  worked: [{ inputs: { k: '72 d', d: '10 mm' }, expected: '720 mm', tolerance: 1e-9, source: sources['toss-103-105'] }],
});
