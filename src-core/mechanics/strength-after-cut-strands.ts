import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const strengthAfterCutStrands = defineCalculation({
  name: 'strength-after-cut-strands',
  means: 'strength left where strands are cut',
  symbol: 'F',
  kind: 'breaking strength',
  formula: 'F = F_b (1 − n / N)',
  symbols: {
    F_b: lineSymbols.F_b,
    n: { meaning: 'cut strands', kind: 'count', min: 0, max: 1000, whole: true },
    N: { meaning: 'strands of the line', kind: 'count', min: 1, max: 1000, whole: true },
  },
  sources: [sources['practice-strength-after-cut-strands'], sources['practice-cut-strands']],
  assumptions: ['strands share the load evenly, and a cut strand carries nothing'],
  refuse: ({ n, N }) => (n > N ? 'more strands are cut than the line has' : undefined),
  compute: ({ F_b, n, N }) => F_b * (1 - n / N),
  worked: [],
  noExample: 'no published strength of line with cut strands was found',
});
