import { slingLegText } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const slingLegTension = defineCalculation({
  name: 'sling-leg-tension',
  means: 'tension in each of two legs',
  symbol: 'T',
  kind: 'tension',
  formula: 'T = (W / 2) ÷ sin β',
  symbols: {
    W: { meaning: 'load on the two legs', kind: 'load', min: 0 },
    β: { meaning: 'angle of a leg from the line square to the load', kind: 'angle', above: 0, max: 90 * degree },
  },
  sources: [sources['rigging-text-legs']],
  assumptions: ['the two legs are equal and share the load equally'],
  compute: ({ W, β }) => W / 2 / Math.sin(β),
  worked: [
    { inputs: { W: '1,000 lbf', β: '60 deg' }, expected: '577 lbf', tolerance: 1e-3, source: slingLegText },
    { inputs: { W: '1,000 lbf', β: '45 deg' }, expected: '707 lbf', tolerance: 1e-3, source: slingLegText },
  ],
});
