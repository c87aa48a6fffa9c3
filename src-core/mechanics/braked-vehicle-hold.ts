import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const brakedVehicleHold = defineCalculation({
  name: 'braked-vehicle-hold',
  means: 'holding power of a braked vehicle as an anchor',
  symbol: 'H',
  kind: 'holding power',
  formula: 'H = 0.666 W',
  symbols: { W: { meaning: 'weight of the anchor vehicle', kind: 'weight', above: 0 } },
  sources: [sources['towing-training-anchor']],
  assumptions: ['every wheel braked on firm, dry ground; on anything slippery it holds less'],
  compute: ({ W }) => 0.666 * W,
  worked: [],
  noExample: 'the text gives the share and no vehicle worked through',
});
