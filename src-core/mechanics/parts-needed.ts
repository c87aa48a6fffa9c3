import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** 16,000 over 8,000 is 2 parts, also when the units' factors leave a trace behind the point. */
const roundUp = (value: number): number => Math.max(1, Math.ceil(value - 1e-9 * value));

export const partsNeeded = defineCalculation({
  name: 'parts-needed',
  means: 'parts of line needed, first estimate',
  symbol: 'MA',
  kind: 'needed count',
  formula: 'MA = LR ÷ P, rounded up',
  symbols: {
    LR: { meaning: 'load resistance', kind: 'resistance', min: 0 },
    P: { meaning: 'pull of the winch', kind: 'line pull', above: 0 },
  },
  sources: [sources['army-lesson-63h34f01'], sources['tb-9-2350-292-10']],
  compute: ({ LR, P }) => roundUp(LR / P),
  worked: [
    { inputs: { LR: '11,400 lbf', P: '8,000 lbf' }, expected: '2', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '24,000 lbf', P: '9,500 lbf' }, expected: '3', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '45,000 lbf', P: '20,000 lbf' }, expected: '3', tolerance: 1e-9, source: sources['army-estimate-derived'] },
  ],
});
