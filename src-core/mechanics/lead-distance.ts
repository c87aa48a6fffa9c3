import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const leadDistance = defineCalculation({
  name: 'lead-distance',
  means: 'distance from the drum to the lead for a wanted fleet angle',
  symbol: 'D',
  kind: 'distance',
  formula: 'D = o / tan θ',
  symbols: {
    o: { meaning: 'offset along the drum from the line\'s square lead; half the width when the lead is at the middle', kind: 'length', min: 0, max: 1000 },
    θ: { meaning: 'wanted fleet angle', kind: 'angle', above: 0, max: Math.PI / 4 },
  },
  sources: [sources['wire-rope-lead-distance'], sources.geometry],
  compute: ({ o, θ }) => o / Math.tan(θ),
  worked: [
    { inputs: { o: '1 ft', θ: '1.5 deg' }, expected: '38 ft', tolerance: 0.006, source: sources['wire-rope-lead-distance'] },
    { inputs: { o: '1 ft', θ: '2 deg' }, expected: '29 ft', tolerance: 0.015, source: sources['wire-rope-lead-distance'] },
    { inputs: { o: '0.5 m', θ: '3 deg' }, expected: '9.5 m', tolerance: 0.006, source: sources['nsw-dogging-rigging-fleet'] },
  ],
});
