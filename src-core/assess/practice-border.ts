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
  { key: 'cut-strands-limit', most: 3, source: ownChoice('a-quarter-of-strands', 'three of twelve strands are a quarter, at which worn line is cut out (CI 2001-04)') },
];

/** The first figure of a statement of practice (SI). */
export function practiceFigure({ values }: BoundStatement): number | undefined {
  for (const [, value] of values) if (value.type === 'quantity') return value.value;
  return countOf(values, 'wraps') ?? countOf(values, 'strands');
}

export const borderOf = ({ definition, values }: BoundStatement): PracticeBorder | undefined => borders.find((b) => b.key === definition.head && (b.for === undefined || b.for === wordOf(values, 'material')));

/** A figure beyond its border is not used: the built-in one counts. */
export function isBeyondBorder(statement: BoundStatement): boolean {
  const [border, figure] = [borderOf(statement), practiceFigure(statement)];
  if (border === undefined || figure === undefined) return false;
  return (border.least !== undefined && isBelow(figure, border.least)) || (border.most !== undefined && isAbove(figure, border.most));
}
