import type { Assessed, Assessing } from '../assess/assessing.ts';
import type { Place, Span } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project, ReadRoot, RigFile } from '../project.ts';

/** A file as a person looks at it: on a day, in the scope of the first root that takes it in. */
export interface Viewing {
  readonly project: Project;
  readonly path: string;
  readonly file: RigFile;
  readonly day: DayNumber;
  readonly root: ReadRoot;
  readonly assessing: Assessing;
}

/** A span in a file of the project. */
export interface FileSpan extends Span {
  readonly path: string;
}

export function viewing(project: Project, path: string, day: DayNumber): Viewing | undefined {
  const file = project.file(path);
  if (file === undefined) return undefined;
  const root = project.read(project.rootsOf(path)[0] ?? path, day);
  return { project, path, file, day, root, assessing: root.assessing };
}

/** What a block comes to; mostly worked out while judging, so asking again costs nothing. */
export const assessedOf = (view: Viewing, block: BoundBlock): Assessed => view.root.judgedBlock(block)?.assessed ?? view.assessing.block(block);

/** Where a place stands, in whichever file of the scope holds it. */
export function fileSpanOf(view: Pick<Viewing, 'root' | 'file'>, place: Place): FileSpan | undefined {
  const own = view.file.spanOf(place);
  if (own !== undefined) return { path: view.file.path, ...own };
  for (const { file } of view.root.files.values()) {
    const span = file.spanOf(place);
    if (span !== undefined) return { path: file.path, ...span };
  }
  return undefined;
}

/** `line 57`, or `practice.rig:3` for a place in another file. */
export function placeText(view: Viewing, place: Place): string {
  const span = fileSpanOf(view, place);
  if (span === undefined) return 'written';
  const file = span.path === view.path ? view.file : view.root.files.get(span.path)!.file;
  const line = file.lines.lineColumn(span.start).line + 1;
  return span.path === view.path ? `line ${line}` : `${span.path}:${line}`;
}
