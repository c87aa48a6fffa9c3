import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** Two straight legs touch the round at right angles to its radius: each is as long as the radius over tan(θ/2), and π + θ of the round is held. */
export const basketLength = defineCalculation({
  name: 'basket-length',
  means: 'length round an anchor, with both legs',
  symbol: 'L',
  kind: 'needed length',
  formula: 'L = C (1/2 + θ / 2π + 1 / (π tan(θ/2)))',
  symbols: {
    C: { meaning: 'girth of the anchor', kind: 'length', above: 0, max: 100 },
    θ: { meaning: 'angle between the legs', kind: 'angle', above: 0, max: Math.PI },
  },
  sources: [sources['eye-geometry']],
  assumptions: ['the anchor is round, and the legs meet in one point'],
  compute: ({ C, θ }) => C * (1 / 2 + θ / (2 * Math.PI) + 1 / (Math.PI * Math.tan(θ / 2))),
  worked: [],
  noExample: 'no published length of a basket was found',
});
