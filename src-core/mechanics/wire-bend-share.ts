import { isBelow } from '../base/compare.ts';
import { ownRowBelow } from '../trade/pull-sources.ts';
import { wireRopeSheaveLossTable as table } from '../trade/wire-rope-sheave-loss-table.ts';
import { defineCalculation } from './define-calculation.ts';

const rows = [...table.rows].sort((a, b) => a.ratio - b.ratio);
const least = rows[0]!;
const greatest = rows.at(-1)!;
/** The last row whose ratio is not above the given one. */
const rowAt = (ratio: number) => rows.findLast((row) => !isBelow(ratio, row.ratio));

export const wireBendShare = defineCalculation({
  name: 'wire-bend-share',
  means: 'share of the strength of wire rope left over a sheave',
  symbol: 's',
  kind: 'share',
  formula: 's = 1 − loss in the table at R',
  symbols: { R: { meaning: 'bend ratio D/d', kind: 'count', min: least.ratio } },
  sources: [table.source, ownRowBelow],
  assumptions: ['wire rope only: the table says nothing about fibre', 'between two rows the sharper bend counts'],
  compute: ({ R }) => 1 - (rowAt(R) ?? least).loss,
  notes: ({ R }) => (R > greatest.ratio ? [`the table ends at a ratio of ${greatest.ratio}; its last loss is kept`] : []),
  worked: rows.map((row) => ({ inputs: { R: String(row.ratio) }, expected: `${100 - Math.round(row.loss * 100)} %`, tolerance: 1e-9, source: table.source })),
});
