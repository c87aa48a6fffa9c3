import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

/** Whole layers that leave the freeboard; never negative, since none is the least that can fit. */
export const layersBelowFlange = (flange_m: number, barrel_m: number, diameter_m: number, freeboard_m: number): number =>
  Math.max(0, Math.floor(((flange_m - barrel_m) / 2 - freeboard_m) / diameter_m + 1e-9));

export const layersThatFit = defineCalculation({
  name: 'layers-that-fit',
  means: 'full layers that fit below the flange',
  symbol: 'N',
  kind: 'count',
  formula: 'N = ⌊((A − B) / 2 − f) / d⌋',
  symbols: {
    A: drumSymbols.A,
    B: drumSymbols.B,
    d: drumSymbols.d,
    f: { meaning: 'freeboard, flange above the outermost layer', kind: 'needed length', min: 0, max: 10 },
  },
  sources: [sources.geometry, sources['practice-freeboard']],
  assumptions: [stacking],
  refuse: ({ A, B }) => (A <= B ? 'the flange is not larger than the barrel' : undefined),
  compute: ({ A, B, d, f }) => layersBelowFlange(A, B, d, f),
  worked: [],
  noExample: 'no published layer count for a stated flange was found',
});
