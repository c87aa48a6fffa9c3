import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const tackleResistance = defineCalculation({
  name: 'tackle-resistance',
  means: 'resistance of the tackle',
  symbol: 'TR',
  kind: 'resistance',
  formula: 'TR = 0.10 LR (MA − 1)',
  symbols: {
    LR: { meaning: 'load resistance', kind: 'resistance', min: 0 },
    MA: { meaning: 'parts of line', kind: 'needed count', min: 1, whole: true },
  },
  sources: [sources['army-lesson-63h34f01'], sources['sheave-loss-plain']],
  assumptions: ['ten per cent of the load resistance for each sheave, MA − 1 sheaves'],
  compute: ({ LR, MA }) => 0.1 * LR * (MA - 1),
  worked: [
    { inputs: { LR: '11,400 lbf', MA: '2' }, expected: '1,140 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
    { inputs: { LR: '24,000 lbf', MA: '4' }, expected: '7,200 lbf', tolerance: 1e-9, source: sources['army-estimate-derived'] },
  ],
});
