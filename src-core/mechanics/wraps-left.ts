import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { layerDiameter_m, lengthThrough_m, outermostLayer } from './drum-geometry.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

export const wrapsLeft = defineCalculation({
  name: 'wraps-left',
  means: 'wraps left on the drum',
  symbol: 'k',
  kind: 'count',
  formula: 'k = w (n − 1) + (y − π w (n − 1) (B + (n − 1) d)) / (π (B + (2n − 1) d)), n the layer in use',
  symbols: {
    y: { meaning: 'line left on the drum', kind: 'usable length', min: 0, max: 100_000 },
    w: drumSymbols.w,
    B: drumSymbols.B,
    d: drumSymbols.d,
  },
  sources: [sources.geometry],
  assumptions: [stacking],
  compute: ({ y, w, B, d }) => {
    if (y === 0) return 0;
    const below = outermostLayer(y, w, B, d) - 1;
    return w * below + (y - lengthThrough_m(below, w, B, d)) / (Math.PI * layerDiameter_m(below + 1, B, d));
  },
  worked: [],
  noExample: 'no published count of wraps for a stated length was found',
});
