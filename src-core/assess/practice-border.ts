import { isAbove, isBelow } from '../base/compare.ts';
import { countOf, wordOf, type BoundStatement } from '../model/bound.ts';
import type { Source } from '../trade/source.ts';
import { ownChoice, sources } from '../trade/sources.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';

/** The last figure of practice that is taken. */
export interface PracticeBorder {
  readonly key: string;
  readonly for?: string;
  readonly least?: number;
  readonly most?: number;
  readonly source: Source;
}

/** Beyond these no published figure was found, or the figure contradicts itself. */
const borders: readonly PracticeBorder[] = [
  { key: 'keep-wraps', least: 2, source: sources['29-cfr-1910-179'] },
  { key: 'line-factor', least: 4 / 3, source: sources['navedtra-14160-overload'] },
  { key: 'heat-limit', for: 'HMPE', most: toSI(144, unitNamed('degC')!), source: sources['hmpe-handbook'] },
  { key: 'abrasion-retire', most: 0.5, source: ownChoice('worn-by-half', 'line of which half is worn away is no line to judge by a shop\'s figure') },
  { key: 'bury', for: 'HMPE', least: 31.5, source: sources['tuck-bury-hmpe'] },
  { key: 'bury', least: 12, source: ownChoice('half-of-a-bury', 'half of the bury of the trade holds about half, and no shorter one was found published') },
  { key: 'taper', for: 'HMPE', least: 7, source: ownChoice('third-of-a-taper', 'a third of the maker\'s taper (21 d) is as good as blunt') },
  { key: 'overload-share', most: 0.75, source: sources['navedtra-14160-overload'] },
  { key: 'near', least: 24, source: ownChoice('near-the-shortest-bury', 'strands take up load again over about a bury, of which the shortest of any fibre is 24 d') },
  { key: 'knot-strength', for: 'HMPE', most: 0.35, source: sources['hmpe-knot-tests'] },
  { key: 'knot-strength', most: 0.8, source: ownChoice('knot-most', 'no knot keeps more than four fifths') },
  { key: 'design-factor', least: 2, source: ownChoice('factor-two', 'below twice the load nothing is left for shock, wear and what was not measured') },
  { key: 'abrasion-share', for: 'moderate', least: 0.1, source: ownChoice('moderate-is-not-light', 'wear that is called moderate is no less than what light wear is taken for') },
  { key: 'temporary-life', most: toSI(1, unitNamed('years')!), source: ownChoice('temporary-a-year', 'what stays in for more than a year is no temporary splice') },
  { key: 'inspection-interval', most: toSI(2, unitNamed('years')!), source: ownChoice('inspection-two-years', 'line that nobody looked at for two years is not known') },
  { key: 'cut-strands-limit', most: 3, source: ownChoice('a-quarter-of-strands', 'three of twelve strands are a quarter, at which worn line is cut out (CI 2001-04)') },
];

/** What a figure of practice is for: a material, a kind of gear, a degree of wear, a bearing. */
export const practiceWord = ({ values }: BoundStatement): string | undefined => wordOf(values, 'material') ?? wordOf(values, 'gear') ?? wordOf(values, 'wear') ?? wordOf(values, 'bearing');

/** The first figure of a statement of practice (SI). */
export function practiceFigure({ values }: BoundStatement): number | undefined {
  for (const [, value] of values) if (value.type === 'quantity') return value.value;
  return countOf(values, 'wraps') ?? countOf(values, 'strands');
}

export const borderOf = (statement: BoundStatement): PracticeBorder | undefined => borders.find((b) => b.key === statement.definition.head && (b.for === undefined || b.for === practiceWord(statement)));

/** A figure beyond its border is not used: the built-in one counts. */
export function isBeyondBorder(statement: BoundStatement): boolean {
  const [border, figure] = [borderOf(statement), practiceFigure(statement)];
  if (border === undefined || figure === undefined) return false;
  return (border.least !== undefined && isBelow(figure, border.least)) || (border.most !== undefined && isAbove(figure, border.most));
}
