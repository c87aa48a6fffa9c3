import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const bridleUnevenTension = defineCalculation({
  name: 'bridle-uneven-tension',
  means: 'tension in the one leg of an uneven bridle',
  symbol: 'T₁',
  kind: 'tension',
  formula: 'T₁ = P sin β ÷ sin(α + β)',
  symbols: {
    P: { meaning: 'pull on the bridle', kind: 'tension', min: 0 },
    α: { meaning: 'angle of this leg from the pull', kind: 'angle', min: 0, max: 90 * degree },
    β: { meaning: 'angle of the other leg from the pull', kind: 'angle', above: 0, max: 90 * degree },
  },
  sources: [sources.statics],
  refuse: ({ α, β }) => (α + β >= 179 * degree ? 'the two legs pull against each other in one line and cannot take the pull' : undefined),
  compute: ({ P, α, β }) => (P * Math.sin(β)) / Math.sin(α + β),
  worked: [
    { inputs: { P: '1,000 lbf', α: '30 deg', β: '30 deg' }, expected: '577 lbf', tolerance: 1e-3, source: sources['rigging-text-legs'] },
    { inputs: { P: '1,000 lbf', α: '45 deg', β: '45 deg' }, expected: '707 lbf', tolerance: 1e-3, source: sources['rigging-text-legs'] },
  ],
});
