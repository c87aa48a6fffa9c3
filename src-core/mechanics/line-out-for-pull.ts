import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lengthThrough_m } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

/** The highest layer on which the winch still has the wanted pull; below 1 when none has. */
const highestLayer = (F_1: number, F: number, B: number, d: number): number => Math.floor((((F_1 * (B + d)) / F - B) / d + 1) / 2 + 1e-9);

export const lineOutForPull = defineCalculation({
  name: 'line-out-for-pull',
  means: 'least line out for the wanted pull',
  symbol: 'x',
  kind: 'distance',
  formula: 'x = L − π w n (B + n d), n = ⌊(1 + (F_1 (B + d) / F − B) / d) / 2⌋; nothing when L fits on layer n',
  symbols: {
    F: { meaning: 'wanted line pull', kind: 'line pull', above: 0, max: 1e8 },
    F_1: drumSymbols.F_1,
    L: drumSymbols.L,
    w: drumSymbols.w,
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources['sae-j706'], sources.geometry],
  assumptions: ['the drum torque is the same on every layer', stacking],
  refuse: ({ F, F_1, B, d }) => (highestLayer(F_1, F, B, d) < 1 ? 'the winch does not have this pull on any layer' : undefined),
  compute: ({ F, F_1, L, w, B, d }) => Math.max(0, L - lengthThrough_m(highestLayer(F_1, F, B, d), w, B, d)),
  worked: [],
  noExample: 'no published line out for a stated pull was found',
});
