import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const tensionAtFastening = defineCalculation({
  name: 'tension-at-fastening',
  means: 'tension that reaches the fastening on the drum',
  symbol: 'T₁',
  kind: 'tension',
  formula: 'T₁ = T₂ / exp(2π μ k)',
  symbols: {
    'T₂': { meaning: 'line pull', kind: 'line pull', min: 0, max: 1e8 },
    μ: { meaning: 'friction coefficient between line and drum', kind: 'count', min: 0, max: 2 },
    k: { meaning: 'wraps on the drum', kind: 'count', min: 0, max: 10_000 },
  },
  sources: [sources['capstan-equation'], sources['alberta-ohs-299']],
  assumptions: ['the line bends freely and is about to slip', 'wraps on higher layers are not counted on'],
  compute: ({ 'T₂': pull_N, μ, k }) => pull_N / Math.exp(2 * Math.PI * μ * k),
  worked: [
    { inputs: { 'T₂': '6.6 kN', μ: '0.3', k: '1' }, expected: '1 kN', tolerance: 0.01, source: sources['capstan-exercise'] },
    { inputs: { 'T₂': '981 N', μ: '0.2', k: '0.75' }, expected: '382.26 N', tolerance: 2e-5, source: sources['rope-friction-exercise-27'] },
    { inputs: { 'T₂': '2,000 N', μ: '0.25', k: '2.5' }, expected: '39 N', tolerance: 0.011, source: sources['belt-and-rope-question'] },
  ],
});
