import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const exitMark = defineCalculation({
  name: 'exit-mark',
  means: 'mark from the tail end at which the tail comes out before it slips back in',
  symbol: 'm_exit',
  kind: 'length',
  formula: 'm_exit = T + E + T / (1 − c)',
  symbols: { T: lineSymbols.T, E: lineSymbols.E, c: lineSymbols.c },
  sources: [sources['toss-104'], sources['splice-shortening-measured']],
  compute: ({ T, E, c }) => T + E + T / (1 - c),
  worked: [{ inputs: { T: '3 m', E: '0 m', c: '25 %' }, expected: '7 m', tolerance: 1e-9, source: sources['toss-104'] }],
});
