import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const capstanHold = defineCalculation({
  name: 'capstan-hold',
  means: 'tension held over tension needed to hold it',
  symbol: 'T₂/T₁',
  kind: 'count',
  formula: 'T₂/T₁ = exp(μ θ)',
  symbols: {
    μ: { meaning: 'friction coefficient between line and drum', kind: 'count', min: 0, max: 2 },
    θ: { meaning: 'angle over which the line lies on the drum', kind: 'angle', min: 0, max: 200 * Math.PI },
  },
  sources: [sources['capstan-equation']],
  assumptions: ['the line bends freely and is about to slip'],
  compute: ({ μ, θ }) => Math.exp(μ * θ),
  worked: [
    { inputs: { μ: '0.3', θ: '360 deg' }, expected: '6.6', tolerance: 0.01, source: sources['capstan-exercise'] },
    { inputs: { μ: '0.3', θ: '720 deg' }, expected: '43', tolerance: 0.012, source: sources['capstan-exercise'] },
    { inputs: { μ: '0.3', θ: '180 deg' }, expected: '2.6', tolerance: 0.02, source: sources['belt-drive-lesson'] },
  ],
});
