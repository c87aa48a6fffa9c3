import type { Span } from '../base/span.ts';
import { showValue } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project } from '../project.ts';
import { winchSummary } from './hover-winch.ts';
import { piecesTable } from './hover-line.ts';
import { statementDetail } from './document-symbols.ts';
import { assessedOf, viewing, type Viewing } from './viewing.ts';

export interface InlayHint {
  readonly at: number;
  readonly text: string;
}

/** Numbers that a line comes to, at its end: bury in diameters, strength that is left, line that is left. */
export function inlayHints(project: Project, path: string, within: Span, day: DayNumber): InlayHint[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const hints: InlayHint[] = [];
  for (const { chunk, offset } of view.file.chunks) {
    if (offset + chunk.text.length < within.start || within.end < offset) continue;
    for (const block of view.file.bound.find((b) => b.chunk === chunk)?.blocks ?? []) {
      for (const statement of block.statements) {
        const span = view.file.spanOf(statement.place)!;
        if (span.end < within.start || within.end < span.start) continue;
        const text = hintFor(view, block, statement);
        if (text !== undefined) hints.push({ at: span.end, text });
      }
    }
  }
  return hints;
}

function hintFor(view: Viewing, block: BoundBlock, statement: BoundStatement): string | undefined {
  const { head } = statement.definition;
  if (head === 'carries' && block.definition.head === 'winch') {
    const winch = assessedOf(view, block);
    return winch.kind === 'winch' && !isUnknown(winch.drum) ? winchSummary(winch) : undefined;
  }
  if (head === 'keep' && block.definition.head === 'winch') {
    const winch = assessedOf(view, block);
    return winch.kind === 'winch' && !isUnknown(winch.keptLength) ? `${showValue(asGiven(winch.keptLength))} of line` : undefined;
  }
  if (head === 'cut' && block.definition.head === 'repair') {
    const repair = assessedOf(view, block);
    if (repair.kind !== 'repair') return undefined;
    return piecesTable(repair.after).rows.map(([name, length]) => `${name!.replaceAll('`', '')} ${length}`).join(' · ');
  }
  if (head === 'damage' || head === 'splice' || head === 'join' || head === 'outboard' || head === 'inboard') return statementDetail(view, block, statement);
  return undefined;
}
