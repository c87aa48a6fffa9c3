import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const breakingFromWorkingLimit = defineCalculation({
  name: 'breaking-from-working-limit',
  means: 'breaking strength that the design factor promises',
  symbol: 'MBL',
  kind: 'breaking strength',
  formula: 'MBL = WLL f',
  symbols: {
    WLL: { meaning: 'working limit', kind: 'working limit', above: 0, max: 1e8 },
    f: { meaning: 'design factor, breaking strength over working limit', kind: 'count', min: 1, max: 100 },
  },
  sources: [sources['asme-b30-26-1-2']],
  assumptions: ['the gear is undamaged and was made to this design factor'],
  compute: ({ WLL, f }) => WLL * f,
  worked: [{ inputs: { WLL: '0.5 t', f: '6' }, expected: '3 t', tolerance: 1e-9, source: sources['seam-111-ropes'] }],
});
