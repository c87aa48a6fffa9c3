import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const exitDistance = defineCalculation({
  name: 'exit-distance',
  means: 'distance from the entry to the exit on the line before it is spliced',
  symbol: 'X',
  kind: 'length',
  formula: 'X = T / (1 − c)',
  symbols: { T: lineSymbols.T, c: lineSymbols.c },
  sources: [sources['toss-104'], sources['splice-shortening-measured']],
  assumptions: ['the standing part shortens evenly over the buried tail, the tapered part as much as the rest'],
  compute: ({ T, c }) => T / (1 - c),
  worked: [
    { inputs: { T: '3 m', c: '25 %' }, expected: '4 m', tolerance: 1e-9, source: sources['toss-104'] },
    { inputs: { T: '18 in', c: '18 %' }, expected: '22 in', tolerance: 0.01, source: sources['practice-field-splice'] },
  ],
});
