import { blockStressChart } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const deadLineForce = defineCalculation({
  name: 'dead-line-force',
  means: 'dead line force, the load on what holds a block',
  symbol: 'DLF',
  kind: 'load',
  formula: 'DLF = FLF × n',
  symbols: {
    FLF: { meaning: 'fall line force', kind: 'tension', min: 0 },
    n: { meaning: 'lines that the dead line supports', kind: 'needed count', min: 1, whole: true },
  },
  sources: [sources['army-lesson-63h34f01']],
  compute: ({ FLF, n }) => FLF * n,
  worked: [{ inputs: { FLF: '500 lbf', n: '2' }, expected: '1,000 lbf', tolerance: 1e-9, source: blockStressChart }],
});
