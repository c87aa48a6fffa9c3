import { ownChoice, sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const taperDropMark = defineCalculation({
  name: 'taper-drop-mark',
  means: 'mark from the tail end at which a pair of strands is dropped',
  symbol: 'x_i',
  kind: 'length',
  formula: 'x_i = t (m − i + 1) / m',
  symbols: {
    t: { ...lineSymbols.t, above: 0 },
    i: { meaning: 'pair, counted from the start of the taper', kind: 'count', min: 1, max: 100, whole: true },
    m: { meaning: 'pairs to drop', kind: 'count', min: 1, max: 100, whole: true },
  },
  sources: [sources['maker-12-strand-taper'], ownChoice('taper-spread-evenly', 'the drops are spread evenly over the taper, the first where it starts')],
  refuse: ({ i, m }) => (i > m ? 'there are fewer pairs to drop' : undefined),
  compute: ({ t, i, m }) => (t * (m - i + 1)) / m,
  worked: [],
  noExample: 'the source says which strands come out, not where',
});
