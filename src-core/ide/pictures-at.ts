import type { Assessed } from '../assess/assessing.ts';
import type { AssessedLine } from '../assess/assess-line.ts';
import { allEnds } from '../assess/ends.ts';
import { contains, type Span } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { drumSection } from '../pictures/drum-section.ts';
import { lineMap } from '../pictures/line-map.ts';
import { loadPath } from '../pictures/load-path.ts';
import type { Picture } from '../pictures/picture.ts';
import { pullByLineOut } from '../pictures/pull-by-line-out.ts';
import { pullPlan } from '../pictures/pull-plan.ts';
import { repairMap } from '../pictures/repair-map.ts';
import { splicePicture } from '../pictures/splice-picture.ts';
import type { Project, RigFile } from '../project.ts';
import { ruleNamed } from '../rules/all.ts';
import { assessedOf, viewing, type Viewing } from './viewing.ts';

/** Text that cannot be read as it stands: what is drawn of it leaves something out. */
export interface BrokenText {
  readonly says: string;
  readonly span: Span;
}

export interface PlacedPicture extends Picture {
  /** The same for the same picture from one state of the text to the next. */
  readonly id: string;
  /** What of the text it shows: a block, or one statement of it. */
  readonly span: Span;
  readonly broken: BrokenText | undefined;
}

/** A picture that could be drawn. */
interface Candidate {
  readonly id: string;
  readonly span: Span;
  /** Its block: what cannot be read anywhere in it may leave something out of the picture. */
  readonly block: Span;
  readonly draw: () => Picture;
}

/** More than these are a wall, not a view; those about the cursor are drawn. */
const mostPictures = 60;

export interface PicturesOfFile {
  /** In the order of the text. */
  readonly pictures: readonly PlacedPicture[];
  /** How many more there would be. */
  readonly leftOut: number;
  /** The first thing in each block that cannot be read. */
  readonly broken: readonly BrokenText[];
}

/** All pictures of a file; of a long one, those about an offset. */
export function picturesOfFile(project: Project, path: string, day: DayNumber, near = 0): PicturesOfFile {
  const view = viewing(project, path, day);
  if (view === undefined) return { pictures: [], leftOut: 0, broken: [] };
  const all = candidatesIn(view);
  const nearest = all.findIndex((c) => near <= c.span.end);
  const first = Math.max(0, Math.min((nearest < 0 ? all.length : nearest) - mostPictures / 2, all.length - mostPictures));
  const chosen = all.slice(first, first + mostPictures);
  const broken = brokenIn(view.file);
  return { pictures: chosen.map((c) => drawn(c, broken)), leftOut: all.length - chosen.length, broken };
}

/** The pictures that belong to a place of the text: of the statement, then of its block, nearest first. */
export function picturesAt(project: Project, path: string, offset: number, day: DayNumber): PlacedPicture[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const broken = brokenIn(view.file);
  return nearestFirst(candidatesIn(view), offset).map((c) => drawn(c, broken));
}

/** Those whose text holds an offset, the one with the least text first; what is drawn first of a block is named first. */
export const nearestFirst = <T extends { readonly span: Span }>(pictures: readonly T[], offset: number): T[] =>
  pictures.filter((p) => contains(p.span, offset)).sort((a, b) => a.span.end - a.span.start - (b.span.end - b.span.start));

function drawn({ id, span, block, draw }: Candidate, broken: readonly BrokenText[]): PlacedPicture {
  return { ...draw(), id, span, broken: broken.find((b) => b.span.start <= block.end && block.start <= b.span.end) };
}

function brokenIn(file: RigFile): BrokenText[] {
  return file.bound.flatMap((chunk) => {
    const problem = chunk.problems.find((p) => ruleNamed(p.code)?.severity === 'error');
    const span = problem === undefined ? undefined : file.spanOf(problem.place);
    return problem === undefined || span === undefined ? [] : [{ says: problem.message, span }];
  });
}

function candidatesIn(view: Viewing): Candidate[] {
  const found: Candidate[] = [];
  const times = new Map<string, number>();
  for (const chunk of view.file.bound) {
    for (const block of chunk.blocks) {
      const span = view.file.spanOf(block.place);
      if (span === undefined) continue;
      for (const { which, at, draw } of picturesOfBlock(view, block)) {
        const name = `${block.definition.head} ${block.name ?? ''} ${which}`;
        const count = (times.get(name) ?? 0) + 1;
        times.set(name, count);
        found.push({ id: count === 1 ? name : `${name} ${count}`, span: (at === undefined ? undefined : view.file.spanOf(at)) ?? span, block: span, draw });
      }
    }
  }
  return found;
}

interface BlockPicture {
  readonly which: string;
  /** The statement that it shows, when it is not of the whole block. */
  readonly at?: BoundBlock['place'] | undefined;
  readonly draw: () => Picture;
}

function picturesOfBlock(view: Viewing, block: BoundBlock): BlockPicture[] {
  // What has no picture is not worked out for it.
  if (!['line', 'winch', 'chain', 'repair', 'pull'].includes(block.definition.head)) return [];
  const assessed: Assessed = assessedOf(view, block);
  switch (assessed.kind) {
    case 'line':
      return [{ which: 'map', draw: () => lineMap(assessed) }, ...splicesOf(assessed, block)];
    case 'winch':
      return [{ which: 'drum', draw: () => drumSection(assessed) }, { which: 'pull by line out', draw: () => pullByLineOut(assessed) }];
    case 'chain':
      return [{ which: 'load path', draw: () => loadPath(assessed) }];
    case 'repair':
      return [{ which: 'map', draw: () => repairMap(assessed) }, ...splicesOf(assessed.after, block)];
    case 'pull': {
      const { winch } = assessed;
      return [{ which: 'plan', draw: () => pullPlan(assessed) }, ...(winch === undefined ? [] : [{ which: 'pull by line out', draw: () => pullByLineOut(winch, assessed.needed) }])];
    }
    default:
      return [];
  }
}

/** Splices that a statement of this block makes, each with that statement. */
function splicesOf(line: AssessedLine, block: BoundBlock): BlockPicture[] {
  return [...allEnds(line)].flatMap(({ piece, end }) => {
    const { statement } = end.facts;
    if (!block.statements.includes(statement as never)) return [];
    return [{ which: `splice ${piece.name} ${end.which}`, at: statement!.place, draw: () => splicePicture(piece, end) }];
  });
}
