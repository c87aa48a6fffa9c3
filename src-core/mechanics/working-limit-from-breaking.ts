import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const workingLimitFromBreaking = defineCalculation({
  name: 'working-limit-from-breaking',
  means: 'working limit',
  symbol: 'WLL',
  kind: 'working limit',
  formula: 'WLL = MBL / f',
  symbols: { MBL: lineSymbols.F_left, f: { meaning: 'design factor, breaking strength over working limit', kind: 'needed count', min: 1, max: 100 } },
  sources: [sources['ci-1401-15']],
  compute: ({ MBL, f }) => MBL / f,
  worked: [
    { inputs: { MBL: '3 t', f: '6' }, expected: '0.5 t', tolerance: 1e-9, source: sources['seam-111-ropes'] },
    { inputs: { MBL: '15,000 lb', f: '5' }, expected: '3,000 lb', tolerance: 1e-9, source: sources['uscg-nylon-question'] },
  ],
});
