import type { Span } from '../base/span.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project } from '../project.ts';
import { resolveUse } from '../use-path.ts';
import { linkAt } from './hover-chain.ts';
import { declarationOf, mentionAt } from './mentions.ts';
import { spanIn, spotAt } from './spot.ts';
import { assessedOf, fileSpanOf, viewing, type FileSpan } from './viewing.ts';

export interface Definition {
  /** What stands under the cursor. */
  readonly from: Span;
  /** The name that is declared. */
  readonly target: FileSpan;
  /** The whole statement or block that declares it. */
  readonly whole: FileSpan;
}

/** Where the name under the cursor is declared; for a line's end, the statement that made that end. */
export function definitionAt(project: Project, path: string, offset: number, day: DayNumber): Definition | undefined {
  const view = viewing(project, path, day);
  const spot = view === undefined ? undefined : spotAt(view.file, offset);
  if (view === undefined || spot?.token === undefined) return undefined;
  const from = spanIn(spot, spot.token);
  const use = spot.bound.uses.find((u) => u.place.start <= spot.at && spot.at <= u.place.end);
  if (use !== undefined) {
    const target = resolveUse(path, use.path);
    if (target === undefined || project.file(target) === undefined) return undefined;
    const top = { path: target, start: 0, end: 0 };
    return { from, target: top, whole: top };
  }
  const mention = mentionAt(spot.bound, spot.at);
  if (mention !== undefined) {
    const declared = declarationOf(view, mention);
    const target = declared === undefined ? undefined : fileSpanOf(view, declared.place);
    if (declared === undefined || target === undefined) return undefined;
    return { from, target, whole: fileSpanOf(view, declared.statement?.place ?? declared.block.place) ?? target };
  }
  const chain = spot.block === undefined ? undefined : assessedOf(view, spot.block);
  const end = chain?.kind === 'chain' ? linkAt(chain, spot.chunk, spot.at)?.end : undefined;
  const made = end === undefined ? undefined : fileSpanOf(view, end.facts.place);
  return made === undefined ? undefined : { from, target: made, whole: made };
}
