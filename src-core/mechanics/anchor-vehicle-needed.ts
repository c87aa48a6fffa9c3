import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const anchorVehicleNeeded = defineCalculation({
  name: 'anchor-vehicle-needed',
  means: 'least weight of a vehicle used as an anchor',
  symbol: 'W_a',
  kind: 'weight',
  formula: 'W_a = 1.5 R',
  symbols: { R: { meaning: 'resistance, or pull on the anchor', kind: 'resistance', min: 0 } },
  sources: [sources['towing-training-anchor']],
  compute: ({ R }) => 1.5 * R,
  worked: [],
  noExample: 'the text gives the factor and no vehicle worked through',
});
