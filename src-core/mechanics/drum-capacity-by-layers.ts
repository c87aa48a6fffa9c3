import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lengthThrough_m, wholeWraps } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';
import { layersBelowFlange } from './layers-that-fit.ts';

export const drumCapacityByLayers = defineCalculation({
  name: 'drum-capacity-by-layers',
  means: 'length of line that the drum takes in full layers',
  symbol: 'L',
  kind: 'usable length',
  formula: 'L = π w N (B + N d), w = ⌊W / d⌋, N = ⌊((A − B) / 2 − f) / d⌋',
  symbols: {
    W: drumSymbols.W,
    A: drumSymbols.A,
    B: drumSymbols.B,
    d: drumSymbols.d,
    f: { meaning: 'freeboard, flange above the outermost layer', kind: 'needed length', min: 0, max: 10 },
  },
  sources: [sources.geometry, sources['practice-freeboard']],
  assumptions: [stacking],
  refuse: ({ W, A, B, d, f }) => {
    if (A <= B) return 'the flange is not larger than the barrel';
    if (wholeWraps(W, d) < 1) return 'the drum is narrower than the line is thick, so no wrap fits';
    return layersBelowFlange(A, B, d, f) < 1 ? 'not one layer fits below the flange with this freeboard' : undefined;
  },
  compute: ({ W, A, B, d, f }) => lengthThrough_m(layersBelowFlange(A, B, d, f), wholeWraps(W, d), B, d),
  worked: [],
  noExample: 'no published capacity by whole layers was found; where whole wraps and layers fill the drum it equals the handbook capacity',
});
