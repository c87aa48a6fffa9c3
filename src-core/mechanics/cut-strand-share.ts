import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const cutStrandShare = defineCalculation({
  name: 'cut-strand-share',
  means: 'share of strength lost to cut strands',
  symbol: 's',
  kind: 'needed share',
  formula: 's = n / N',
  symbols: {
    n: { meaning: 'cut strands', kind: 'count', min: 0, max: 1000, whole: true },
    N: { meaning: 'strands of the line', kind: 'count', min: 1, max: 1000, whole: true },
  },
  sources: [sources['practice-strength-after-cut-strands']],
  assumptions: ['strands share the load evenly, and a cut strand carries nothing'],
  refuse: ({ n, N }) => (n > N ? 'more strands are cut than the line has' : undefined),
  compute: ({ n, N }) => n / N,
  worked: [],
  noExample: 'no published strength of line with cut strands was found',
});
