import { blockGuide } from '../trade/pull-sources.ts';
import { blockLoadFactorTable } from '../trade/block-load-factor-table.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;
const catalogues = blockLoadFactorTable.source;

export const blockLoad = defineCalculation({
  name: 'block-load',
  means: 'load on the block',
  symbol: 'P',
  kind: 'load',
  formula: 'P = 2 T cos(θ/2)',
  symbols: {
    T: { meaning: 'line pull', kind: 'tension', min: 0 },
    θ: { meaning: 'angle between the two parts', kind: 'angle', min: 0, max: 180 * degree },
  },
  sources: [catalogues],
  assumptions: ['both parts carry the line pull: friction, which lowers the part behind the block, is left out'],
  compute: ({ T, θ }) => Math.max(0, 2 * T * Math.cos(θ / 2)),
  worked: [
    { inputs: { T: '1,000 lbf', θ: '50 deg' }, expected: '1,810 lbf', tolerance: 0.002, source: catalogues },
    { inputs: { T: '1,000 lbf', θ: '135 deg' }, expected: '760 lbf', tolerance: 0.01, source: catalogues },
    { inputs: { T: '150 kgf', θ: '100 deg' }, expected: '193.4 kgf', tolerance: 0.004, source: blockGuide },
    { inputs: { T: '100 kgf', θ: '0 deg' }, expected: '200 kgf', tolerance: 1e-9, source: blockGuide },
  ],
});
