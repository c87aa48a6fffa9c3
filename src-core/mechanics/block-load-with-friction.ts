import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const blockLoadWithFriction = defineCalculation({
  name: 'block-load-with-friction',
  means: 'load on the block, the part behind it being slacker',
  symbol: 'P',
  kind: 'load',
  formula: 'P = T √(1 + e × e + 2 e cos θ)',
  symbols: {
    T: { meaning: 'line pull in front of the block', kind: 'tension', min: 0 },
    e: { meaning: 'share of the tension that passes the sheave', kind: 'share', above: 0, max: 1 },
    θ: { meaning: 'angle between the two parts', kind: 'angle', min: 0, max: 180 * degree },
  },
  sources: [sources.statics],
  compute: ({ T, e, θ }) => T * Math.sqrt(Math.max(0, 1 + e * e + 2 * e * Math.cos(θ))),
  worked: [{ inputs: { T: '1,000 lbf', e: '100 %', θ: '50 deg' }, expected: '1,810 lbf', tolerance: 0.002, source: sources['rigging-catalogue-blocks'] }],
});
