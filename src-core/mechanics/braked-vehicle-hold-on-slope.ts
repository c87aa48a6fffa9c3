import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** The pull comes down the slope that the vehicle stands on: its own weight pulls the same way. */
export const brakedVehicleHoldOnSlope = defineCalculation({
  name: 'braked-vehicle-hold-on-slope',
  means: 'holding power of a braked vehicle as an anchor, above the load on the same slope',
  symbol: 'H',
  kind: 'holding power',
  formula: 'H = W (0.666 cos α − sin α), nothing where that is below it',
  symbols: {
    W: { meaning: 'weight of the anchor vehicle', kind: 'weight', above: 0 },
    α: { meaning: 'angle of the slope, uphill', kind: 'angle', min: 0, max: Math.PI / 2 },
  },
  sources: [sources['towing-training-anchor'], sources.statics],
  assumptions: ['every wheel braked on firm, dry ground; on anything slippery it holds less', 'it grips with its weight square to the ground, as on the level'],
  compute: ({ W, α }) => Math.max(0, W * (0.666 * Math.cos(α) - Math.sin(α))),
  worked: [],
  noExample: 'the text gives the share on level ground only',
});
