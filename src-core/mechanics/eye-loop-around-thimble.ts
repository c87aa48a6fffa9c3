import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const eyeLoopAroundThimble = defineCalculation({
  name: 'eye-loop-around-thimble',
  means: 'length of line around the thimble',
  symbol: 'E',
  kind: 'length',
  formula: 'E = π (D + d)',
  symbols: { D: { meaning: 'diameter at the bottom of the thimble\'s groove', kind: 'diameter', above: 0, max: 10 }, d: lineSymbols.d },
  sources: [sources['eye-geometry']],
  assumptions: ['the groove is a full circle and the line is measured along its middle; a pointed thimble is measured with a tape and its length written instead'],
  compute: ({ D, d }) => Math.PI * (D + d),
  worked: [],
  noExample: 'no published length of line around a thimble of stated groove was found',
});
