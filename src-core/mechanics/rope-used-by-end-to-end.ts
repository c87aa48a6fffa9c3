import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const ropeUsedByEndToEnd = defineCalculation({
  name: 'rope-used-by-end-to-end',
  means: 'length of line that an end-to-end splice uses, of both lines together',
  symbol: 'U',
  kind: 'needed length',
  formula: 'U = 2 T + 2 s, s = T c / (1 − c)',
  symbols: { T: lineSymbols.T, c: lineSymbols.c },
  sources: [sources['toss-104'], sources['splice-shortening-measured']],
  assumptions: ['each line buries a tail of this length in the other'],
  compute: ({ T, c }) => (2 * T) / (1 - c),
  worked: [{ inputs: { T: '3 m', c: '25 %' }, expected: '8 m', tolerance: 1e-9, source: sources['toss-104'] }],
});
