import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

export const lockStitchLength = defineCalculation({
  name: 'lock-stitch-length',
  means: 'length of the lock-stitch from the throat',
  symbol: 'l',
  kind: 'needed length',
  formula: 'l = k d',
  symbols: { k: { meaning: 'length of the lock-stitch in diameters', kind: 'needed diameters', above: 0, max: 100 }, d: lineSymbols.d },
  sources: [sources['lock-stitch-guide']],
  assumptions: ['stitches lie one diameter apart, and back'],
  compute: ({ k, d }) => k * d,
  worked: [],
  noExample: 'the source gives the stitch in diameters alone',
});
