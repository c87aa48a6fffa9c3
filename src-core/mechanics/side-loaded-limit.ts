import { sideLoadQuestion } from '../trade/gear-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const sideLoadedLimit = defineCalculation({
  name: 'side-loaded-limit',
  means: 'working limit of the shackle under side load',
  symbol: 'WLL_s',
  kind: 'working limit',
  formula: 'WLL_s = s × WLL',
  symbols: {
    WLL: { meaning: 'working limit in line', kind: 'working limit', above: 0 },
    s: { meaning: 'share left under side load', kind: 'share', above: 0, max: 1 },
  },
  sources: [sources['shackle-side-load']],
  compute: ({ WLL, s }) => s * WLL,
  worked: [{ inputs: { WLL: '3.25 t', s: '50 %' }, expected: '1.625 t', tolerance: 1e-9, source: sideLoadQuestion }],
});
