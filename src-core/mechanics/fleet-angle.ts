import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const fleetAngle = defineCalculation({
  name: 'fleet-angle',
  means: 'fleet angle',
  symbol: 'θ',
  kind: 'angle',
  formula: 'θ = arctan(o / D)',
  symbols: {
    o: { meaning: 'offset along the drum from the line\'s square lead; half the width when the lead is at the middle', kind: 'length', min: 0, max: 1000 },
    D: { meaning: 'distance from the drum to the lead', kind: 'length', above: 0, max: 10_000 },
  },
  sources: [sources['wire-rope-manual-fleet'], sources.geometry],
  compute: ({ o, D }) => Math.atan(o / D),
  worked: [
    { inputs: { o: '0.5 m', D: '9.5 m' }, expected: '3 deg', tolerance: 0.006, source: sources['nsw-dogging-rigging-fleet'] },
    { inputs: { o: '1 ft', D: '38 ft' }, expected: '1.5 deg', tolerance: 0.006, source: sources['wire-rope-lead-distance'] },
    { inputs: { o: '1 ft', D: '29 ft' }, expected: '2 deg', tolerance: 0.015, source: sources['wire-rope-lead-distance'] },
  ],
});
