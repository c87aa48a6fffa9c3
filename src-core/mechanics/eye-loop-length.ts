import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** A soft eye laid flat, without a thimble. */
export const eyeLoopLength = defineCalculation({
  name: 'eye-loop-length',
  means: 'length of line around a soft eye',
  symbol: 'E',
  kind: 'length',
  formula: 'E = 2 l',
  symbols: { l: { meaning: 'length of the eye laid flat, throat to bearing point', kind: 'length', above: 0, max: 100 } },
  sources: [sources['eye-geometry']],
  assumptions: ['the eye is laid flat, both sides side by side'],
  compute: ({ l }) => 2 * l,
  worked: [],
  noExample: 'twice a length; no published example was found',
});
