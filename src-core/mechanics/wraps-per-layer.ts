import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { wholeWraps } from './drum-geometry.ts';
import { drumSymbols } from './drum-symbols.ts';

export const wrapsPerLayer = defineCalculation({
  name: 'wraps-per-layer',
  means: 'wraps on a full layer',
  symbol: 'w',
  kind: 'count',
  formula: 'w = ⌊W / d⌋',
  symbols: { W: drumSymbols.W, d: drumSymbols.d },
  sources: [sources.geometry],
  assumptions: ['wraps lie side by side, and what is left over at the flange holds no wrap'],
  refuse: ({ W, d }) => (wholeWraps(W, d) < 1 ? 'the drum is narrower than the line is thick, so no wrap fits' : undefined),
  compute: ({ W, d }) => wholeWraps(W, d),
  worked: [],
  noExample: 'no published count of wraps for a stated drum width was found',
});
