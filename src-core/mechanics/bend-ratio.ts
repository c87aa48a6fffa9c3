import { bendRatioArticle, bendRatioSlides } from '../trade/gear-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const bendRatio = defineCalculation({
  name: 'bend-ratio',
  means: 'bend ratio of the line over what it bears on',
  symbol: 'R',
  kind: 'count',
  formula: 'R = D ÷ d',
  symbols: {
    D: { meaning: 'diameter of the pin, thimble, sheave or rope that the line bears on', kind: 'diameter', above: 0 },
    d: { meaning: 'diameter of the line', kind: 'diameter', above: 0 },
  },
  sources: [sources['hoist-manual-table-b']],
  compute: ({ D, d }) => D / d,
  worked: [
    { inputs: { D: '6 in', d: '1 in' }, expected: '6', tolerance: 1e-9, source: bendRatioSlides },
    { inputs: { D: '12 in', d: '3/8 in' }, expected: '32', tolerance: 1e-9, source: bendRatioArticle },
    { inputs: { D: '10 in', d: '1/2 in' }, expected: '20', tolerance: 1e-9, source: bendRatioArticle },
  ],
});
