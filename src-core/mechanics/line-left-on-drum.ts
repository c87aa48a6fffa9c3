import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols } from './drum-symbols.ts';

export const lineLeftOnDrum = defineCalculation({
  name: 'line-left-on-drum',
  means: 'line left on the drum',
  symbol: 'y',
  kind: 'usable length',
  formula: 'y = L − x',
  symbols: { L: drumSymbols.L, x: drumSymbols.x },
  sources: [sources['lengths-add']],
  refuse: ({ L, x }) => (x > L * (1 + 1e-12) ? 'more line is out than there is' : undefined),
  compute: ({ L, x }) => Math.max(0, L - x),
  worked: [],
  noExample: 'a difference of two lengths; no published example was found',
});
