import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const taperNeeded = defineCalculation({
  name: 'taper-needed',
  means: 'needed taper',
  symbol: 't_0',
  kind: 'needed length',
  formula: 't_0 = k_t d',
  symbols: { k_t: { meaning: 'needed taper in diameters', kind: 'needed diameters', min: 0, max: 1000 }, d: lineSymbols.d },
  sources: [sources['maker-12-strand-eye']],
  compute: ({ k_t, d }) => k_t * d,
  worked: [{ inputs: { k_t: '1 fid', d: '1 in' }, expected: '21 in', tolerance: 1e-9, source: sources['fid-chart'] }],
});
