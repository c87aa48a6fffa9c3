import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** A line is partly air, and its strands lie aslant: it stays well below. */
export const fibreStrength = defineCalculation({
  name: 'fibre-strength',
  means: 'strength of a solid rod of the fibre',
  symbol: 'F',
  kind: 'breaking strength',
  formula: 'F = σ π d² / 4',
  symbols: {
    σ: { meaning: 'tensile strength of the fibre', kind: 'pressure', min: 0, max: 1e11 },
    d: { meaning: 'diameter', kind: 'diameter', min: 0, max: 1 },
  },
  sources: [sources['fibre-maker-table-3'], sources.statics],
  compute: ({ σ, d }) => (σ * Math.PI * d ** 2) / 4,
  worked: [],
  noExample: 'no line as dense as its fibre exists to compare with',
});
