import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m, outermostLayer } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';
import { nothingOnDrum } from './layer-at-line-out.ts';

export const pullAtLineOut = defineCalculation({
  name: 'pull-at-line-out',
  means: 'line pull with this much line out',
  symbol: 'F_n',
  kind: 'line pull',
  formula: 'F_n = F_1 (B + d) / (B + (2n − 1) d), n = ⌈(−B + √(B² + 4 d (L − x) / (π w))) / (2 d)⌉',
  symbols: { F_1: drumSymbols.F_1, L: drumSymbols.L, x: drumSymbols.x, w: drumSymbols.w, B: drumSymbols.B, d: drumSymbols.d },
  sources: [sources['sae-j706'], sources['tm-9-2320-430-10'], sources.geometry],
  assumptions: ['the drum torque is the same on every layer', stacking],
  refuse: ({ L, x }) => nothingOnDrum(L, x),
  compute: ({ F_1, L, x, w, B, d }) => (F_1 * (B + d)) / layerDiameter_m(outermostLayer(L - x, w, B, d), B, d),
  worked: [],
  noExample: 'no published pull for a stated line out was found; the pull by layer behind it is checked against TM 9-2320-430-10',
});
