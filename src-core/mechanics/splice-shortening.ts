import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const spliceShortening = defineCalculation({
  name: 'splice-shortening',
  means: 'length by which the standing part shortens over the buried tail',
  symbol: 's',
  kind: 'needed length',
  formula: 's = X − T = T c / (1 − c)',
  symbols: { T: lineSymbols.T, c: lineSymbols.c },
  sources: [sources['toss-104'], sources['splice-shortening-measured']],
  assumptions: ['the standing part shortens evenly over the buried tail, the tapered part as much as the rest'],
  compute: ({ T, c }) => (T * c) / (1 - c),
  worked: [
    { inputs: { T: '3 m', c: '25 %' }, expected: '1 m', tolerance: 1e-9, source: sources['toss-104'] },
    { inputs: { T: '18 in', c: '18 %' }, expected: '4 in', tolerance: 0.02, source: sources['practice-field-splice'] },
  ],
});
