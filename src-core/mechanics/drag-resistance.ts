import { ownDragShare, winchAnswers } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Given } from './derivation.ts';
import { tableValue } from './table-value.ts';

/** Share of the carried weight that it takes to drag a wheel that does not turn. */
export const dragShare = (): Given => tableValue(2 / 3, 2 / 3, 'needed share', winchAnswers, 'write the resistance as a share of the weight');

export const dragResistance = defineCalculation({
  name: 'drag-resistance',
  means: 'resistance of wheels that do not turn',
  symbol: 'R_d',
  kind: 'resistance',
  formula: 'R_d = f p W',
  symbols: {
    W: { meaning: 'weight of the vehicle', kind: 'weight', min: 0 },
    p: { meaning: 'share of the weight on wheels that do not turn', kind: 'needed share', min: 0, max: 1 },
    f: { meaning: 'share of the carried weight that dragging takes', kind: 'needed share', min: 0, max: 3 },
  },
  sources: [winchAnswers, sources['towing-training-anchor'], ownDragShare],
  assumptions: ['the same two thirds by which a braked vehicle holds as an anchor'],
  compute: ({ W, p, f }) => f * p * W,
  worked: [],
  noExample: 'the sources give the share, two thirds, and no vehicle worked through',
});
