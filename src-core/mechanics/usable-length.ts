import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols } from './drum-symbols.ts';

export const usableLength = defineCalculation({
  name: 'usable-length',
  means: 'line that may be run out',
  symbol: 'U',
  kind: 'usable length',
  formula: 'U = L − K',
  symbols: { L: drumSymbols.L, K: { meaning: 'length of line in the kept wraps', kind: 'needed length', min: 0, max: 100_000 } },
  sources: [sources['lengths-add']],
  assumptions: ['nothing is taken off for the way from the drum to the fairlead'],
  refuse: ({ L, K }) => (K > L * (1 + 1e-12) ? 'the line is shorter than the wraps to keep' : undefined),
  compute: ({ L, K }) => Math.max(0, L - K),
  worked: [],
  noExample: 'a difference of two lengths; no published example was found',
});
