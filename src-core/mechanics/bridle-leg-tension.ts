import { slingLegText } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const bridleLegTension = defineCalculation({
  name: 'bridle-leg-tension',
  means: 'tension in each leg of a two-legged bridle',
  symbol: 'T',
  kind: 'tension',
  formula: 'T = P ÷ (2 cos(θ/2))',
  symbols: {
    P: { meaning: 'pull on the bridle', kind: 'tension', min: 0 },
    θ: { meaning: 'angle between the legs', kind: 'angle', min: 0, max: 179 * degree },
  },
  sources: [sources['rigging-text-legs'], sources.statics],
  assumptions: ['the pull halves the angle between the legs, so that both carry the same'],
  compute: ({ P, θ }) => P / (2 * Math.cos(θ / 2)),
  notes: ({ θ }) => (θ > 120 * degree ? ['over 120° each leg carries more than the whole pull'] : []),
  worked: [
    { inputs: { P: '1,000 lbf', θ: '60 deg' }, expected: '577 lbf', tolerance: 1e-3, source: slingLegText },
    { inputs: { P: '1,000 lbf', θ: '90 deg' }, expected: '707 lbf', tolerance: 1e-3, source: slingLegText },
  ],
});
