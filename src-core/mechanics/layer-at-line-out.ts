import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { outermostLayer } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

/** A sentence when no line is on the drum, so that no layer is in use. */
export const nothingOnDrum = (L: number, x: number): string | undefined => {
  if (x > L * (1 + 1e-12)) return 'more line is out than there is';
  return x >= L * (1 - 1e-12) ? 'the whole line is out, so no layer is in use' : undefined;
};

export const layerAtLineOut = defineCalculation({
  name: 'layer-at-line-out',
  means: 'layer in use',
  symbol: 'n',
  kind: 'needed count',
  formula: 'n = ⌈(−B + √(B² + 4 d (L − x) / (π w))) / (2 d)⌉',
  symbols: { L: drumSymbols.L, x: drumSymbols.x, w: drumSymbols.w, B: drumSymbols.B, d: drumSymbols.d },
  sources: [sources.geometry],
  assumptions: [stacking],
  refuse: ({ L, x }) => nothingOnDrum(L, x),
  compute: ({ L, x, w, B, d }) => outermostLayer(L - x, w, B, d),
  worked: [],
  noExample: 'no published layer for a stated line out was found',
});
