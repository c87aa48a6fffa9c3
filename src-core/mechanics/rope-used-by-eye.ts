import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const ropeUsedByEye = defineCalculation({
  name: 'rope-used-by-eye',
  means: 'length of line that the eye uses, cut end to bearing point',
  symbol: 'U',
  kind: 'needed length',
  formula: 'U = T + E / 2 + s, s = T c / (1 − c)',
  symbols: { T: lineSymbols.T, E: lineSymbols.E, c: lineSymbols.c },
  sources: [sources['toss-104'], sources['splice-shortening-measured']],
  assumptions: ['the finished length counts to the bearing point, the far side of the eye'],
  compute: ({ T, E, c }) => T / (1 - c) + E / 2,
  worked: [{ inputs: { T: '3 m', E: '0 m', c: '25 %' }, expected: '4 m', tolerance: 1e-9, source: sources['toss-104'] }],
});
