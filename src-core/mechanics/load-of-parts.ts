import { derivedFrom } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const loadOfParts = defineCalculation({
  name: 'load-of-parts',
  means: 'load of several parts of a line on one thing that holds them',
  symbol: 'P',
  kind: 'load',
  formula: 'P = n T',
  symbols: {
    T: { meaning: 'line pull', kind: 'tension', min: 0 },
    n: { meaning: 'parts of the line that pull at it', kind: 'count', min: 1, max: 100 },
  },
  sources: [derivedFrom('parts-add', 'statics: forces on one thing add up, and the most that they make is when all pull the same way')],
  assumptions: ['every part carries the line pull: friction, which lowers the parts behind a block, is left out'],
  compute: ({ T, n }) => n * T,
  worked: [],
  noExample: 'a definition; a block with both parts side by side is the case of two, which the block loads check',
});
