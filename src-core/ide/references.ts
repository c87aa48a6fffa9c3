import type { Span } from '../base/span.ts';
import type { DayNumber } from '../model/day.ts';
import type { Declaration } from '../model/scope.ts';
import type { Project } from '../project.ts';
import { declarationOf, mentionAt, mentionsIn, type Mention } from './mentions.ts';
import { spotAt } from './spot.ts';
import { fileSpanOf, viewing, type FileSpan, type Viewing } from './viewing.ts';

export interface Reference extends FileSpan {
  readonly declares: boolean;
}

export interface NamedThing {
  readonly view: Viewing;
  readonly mention: Mention;
  readonly declared: Declaration;
}

/** What the name under the cursor stands for. */
export function thingAt(project: Project, path: string, offset: number, day: DayNumber): NamedThing | undefined {
  const view = viewing(project, path, day);
  const spot = view === undefined ? undefined : spotAt(view.file, offset);
  const mention = spot === undefined ? undefined : mentionAt(spot.bound, spot.at);
  const declared = view === undefined || mention === undefined ? undefined : declarationOf(view, mention);
  return view === undefined || mention === undefined || declared === undefined ? undefined : { view, mention, declared };
}

/** The file that declares it. */
export const homeOf = ({ view, declared }: Pick<NamedThing, 'view' | 'declared'>): string => fileSpanOf(view, declared.place)?.path ?? view.path;

/** Every place that speaks of a thing, in every file that is read together with its declaration. */
export function mentionsOf(project: Project, thing: Pick<NamedThing, 'view' | 'declared'>, day: DayNumber): Reference[] {
  const { declared } = thing;
  const found = new Map<string, Reference>();
  for (const root of project.rootsOf(homeOf(thing))) {
    const here = viewing(project, root, day);
    if (here === undefined) continue;
    for (const { file } of here.root.files.values()) {
      for (const chunk of file.bound) {
        for (const mention of mentionsIn(chunk)) {
          if (mention.name !== declared.name) continue;
          const other = declarationOf(here, mention) ?? ofAnotherKind(here, mention);
          if (other === undefined || other.place.chunk !== declared.place.chunk || other.place.start !== declared.place.start) continue;
          const span = file.spanOf(mention.place)!;
          found.set(`${file.path}:${span.start}`, { path: file.path, ...span, declares: mention.declares });
        }
      }
    }
  }
  return [...found.values()].sort((a, b) => (a.path === b.path ? a.start - b.start : a.path < b.path ? -1 : 1));
}

/** A name where another kind of thing is wanted still means the one that has it. */
const ofAnotherKind = (here: Viewing, { name, vehicle, declares }: Mention): Declaration | undefined => (declares || vehicle !== undefined ? undefined : here.assessing.reader.declarations(name)[0]);

export function referencesAt(project: Project, path: string, offset: number, day: DayNumber, withDeclaration = true): Reference[] {
  const thing = thingAt(project, path, offset, day);
  return thing === undefined ? [] : mentionsOf(project, thing, day).filter((r) => withDeclaration || !r.declares);
}

export interface Highlight extends Span {
  readonly declares: boolean;
}

/** The same name within the file. */
export const highlightsAt = (project: Project, path: string, offset: number, day: DayNumber): Highlight[] => referencesAt(project, path, offset, day).filter((r) => r.path === path);
