import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const lengthInDiameters = defineCalculation({
  name: 'length-of-diameters',
  means: 'length of so many diameters',
  symbol: 'l',
  kind: 'length',
  formula: 'l = k d',
  symbols: {
    k: { meaning: 'number of diameters', kind: 'in diameters', min: 0, max: 1000 },
    d: { meaning: 'line diameter', kind: 'diameter', above: 0, max: 1 },
  },
  sources: [sources['lengths-add']],
  compute: ({ k, d }) => k * d,
  worked: [{ inputs: { k: '72 d', d: '10 mm' }, expected: '720 mm', tolerance: 1e-9, source: sources['toss-103-105'] }],
});
