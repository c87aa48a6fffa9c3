import type { Span } from '../base/span.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project } from '../project.ts';
import { blockSummary } from './summary.ts';
import { viewing } from './viewing.ts';

export interface CodeLens extends Span {
  readonly title: string;
}

/** Blocks whose outcome is worth a line of its own above them. */
const summed: ReadonlySet<string> = new Set(['line', 'pull']);

/** What each line and each pull comes to, above its name. */
export function codeLenses(project: Project, path: string, day: DayNumber): CodeLens[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  return view.file.bound.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (summed.has(block.definition.head) ? [{ ...view.file.spanOf(block.namePlace)!, title: blockSummary(view, block) }] : [])),
  );
}
