import { ownChoice, sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols, loss } from './line-symbols.ts';

export const strengthAfterOutdoorTime = defineCalculation({
  name: 'strength-after-outdoor-time',
  means: 'strength left after the time outdoors',
  symbol: 'F',
  kind: 'breaking strength',
  formula: 'F = F_b (1 − λ τ / τ_0), nothing when the loss reaches the whole',
  symbols: {
    F_b: lineSymbols.F_b,
    λ: loss('share of strength lost in the observed time'),
    τ: { meaning: 'time outdoors', kind: 'time', min: 0, max: 100 * 365.25 * 86_400 },
    τ_0: { meaning: 'time over which the loss was observed', kind: 'time', above: 0, max: 100 * 365.25 * 86_400 },
  },
  sources: [
    sources['navedtra-14160-outdoor'],
    ownChoice('outdoor-loss-linear', 'the loss is taken to grow evenly, and to go on at the same rate beyond the observed time, which errs to the careful side'),
  ],
  assumptions: ['the figure is for synthetic line in general; a maker\'s figure for the material goes before it'],
  compute: ({ F_b, λ, τ, τ_0 }) => F_b * Math.max(0, 1 - (λ * τ) / τ_0),
  notes: ({ τ, τ_0 }) => (τ > τ_0 ? ['the time outdoors is longer than the time over which the loss was observed'] : []),
  worked: [{ inputs: { F_b: '100 kN', λ: '30 %', τ: '2 years', τ_0: '2 years' }, expected: '70 kN', tolerance: 1e-9, source: sources['navedtra-14160-outdoor'] }],
});
