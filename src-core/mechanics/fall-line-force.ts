import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const fallLineForce = defineCalculation({
  name: 'fall-line-force',
  means: 'fall line force, the pull asked of the winch',
  symbol: 'FLF',
  kind: 'tension',
  formula: 'FLF = (LR + TR) ÷ MA',
  symbols: {
    LR: { meaning: 'load resistance', kind: 'resistance', min: 0 },
    TR: { meaning: 'tackle resistance', kind: 'resistance', min: 0 },
    MA: { meaning: 'parts of line', kind: 'needed count', min: 1, whole: true },
  },
  sources: [sources['army-lesson-63h34f01'], sources['tb-9-2350-292-10']],
  compute: ({ LR, TR, MA }) => (LR + TR) / MA,
  worked: [
    { inputs: { LR: '11,400 lbf', TR: '1,140 lbf', MA: '2' }, expected: '6,270 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '24,000 lbf', TR: '4,800 lbf', MA: '3' }, expected: '9,600 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '24,000 lbf', TR: '7,200 lbf', MA: '4' }, expected: '7,800 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '45,000 lbf', TR: '9,000 lbf', MA: '3' }, expected: '18,000 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
  ],
});
