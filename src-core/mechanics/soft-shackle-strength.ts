import { ownWeaker, softShackleTests } from '../trade/pull-sources.ts';
import { softShackleNamed } from '../trade/soft-shackle-share.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

/** Strength in shares of the line it is tied from, by its knot: `diamond`, `button`; unknown for any other. */
export function softShackleShare(knot: string, name = 'the soft shackle'): Value {
  const row = softShackleNamed(knot);
  if (row === undefined) return noFigure(`knot of ${name}`, `no break test is known for the knot \`${knot}\` of ${name}`, 'write the breaking strength from its tag');
  return tableValue(row.low, row.high, 'share', row.sources[0], 'write the breaking strength from its tag');
}

export const softShackleStrength = defineCalculation({
  name: 'soft-shackle-strength',
  means: 'breaking strength of the soft shackle',
  symbol: 'F_s',
  kind: 'breaking strength',
  formula: 'F_s = k F',
  symbols: {
    F: { meaning: 'breaking strength of the line it is tied from', kind: 'breaking strength', above: 0 },
    k: { meaning: 'strength by knot, in shares of the line', kind: 'share', above: 0, max: 4 },
  },
  sources: [softShackleTests, ownWeaker],
  assumptions: ['four parts of line stand in it, and the knot or the eye breaks long before they do', 'the knot is well set; one that is not breaks far below'],
  compute: ({ F, k }) => k * F,
  worked: [],
  noExample: 'the testers give shares of the line and no load in pounds',
});
