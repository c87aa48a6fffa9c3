import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const fidLength = defineCalculation({
  name: 'fid-length',
  means: 'fid length',
  symbol: 'f',
  kind: 'length',
  formula: 'f = 21 d',
  symbols: { d: lineSymbols.d },
  sources: [sources['fid-21d'], sources['fid-chart']],
  assumptions: ['fids as sold are near 21 d, not exactly'],
  compute: ({ d }) => 21 * d,
  worked: [
    { inputs: { d: '1 in' }, expected: '21 in', tolerance: 1e-9, source: sources['fid-chart'] },
    { inputs: { d: '3/4 in' }, expected: '16 in', tolerance: 0.02, source: sources['fid-chart'] },
    { inputs: { d: '3/8 in' }, expected: '7 3/4 in', tolerance: 0.02, source: sources['fid-chart'] },
  ],
});
