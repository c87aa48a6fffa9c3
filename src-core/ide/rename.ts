import type { Place, Span } from '../base/span.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import { newNameOf } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project, ReadRoot, RigFile } from '../project.ts';
import { Chunk } from '../syntax/chunk.ts';
import { ends } from '../vocabulary/blocks/line.ts';
import type { Part } from '../vocabulary/shape.ts';
import { vocabulary } from '../vocabulary/vocabulary.ts';
import { mentionsIn } from './mentions.ts';
import { homeOf, mentionsOf, thingAt, type NamedThing, type Reference } from './references.ts';
import { placeText, viewing } from './viewing.ts';

export interface RenameStart extends Span {
  readonly name: string;
}

/** The name that would be changed; undefined where there is none. */
export function renameStart(project: Project, path: string, offset: number, day: DayNumber): RenameStart | undefined {
  const thing = thingAt(project, path, offset, day);
  const span = thing === undefined ? undefined : thing.view.file.spanOf(thing.mention.place);
  return thing === undefined || span === undefined ? undefined : { ...span, name: thing.declared.name };
}

export type Rename = { readonly edits: readonly Reference[] } | { readonly refused: string };

const nameShape = /^[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*$/u;
const longestName = 200;
/** Gear that a route gives by its size. */
const sizedGear = ['shackle', 'soft-shackle'];

/** Words that mean something by themselves where names stand. */
const taken: ReadonlySet<string> = new Set(['at', 'from', 'to', ...Object.keys(ends), ...sizedGear, ...vocabulary.flatMap((block) => [block.header, ...[...block.statements, ...(block.entries ?? [])].map((s) => s.parts)].filter(takesName).flatMap(clauseWords))]);

function takesName(parts: readonly Part[]): boolean {
  return parts.some((part) => part.part === 'name' || part.part === 'new-name' || (part.part === 'clause' && takesName(part.parts)));
}

function clauseWords(parts: readonly Part[]): string[] {
  return parts.flatMap((part) => (part.part === 'clause' ? [part.word, ...clauseWords(part.parts)] : part.part === 'flag' ? [part.word] : []));
}

/** Every place to change, or why the new name will not do. */
export function renameAt(project: Project, path: string, offset: number, day: DayNumber, wanted: string): Rename | undefined {
  const thing = thingAt(project, path, offset, day);
  if (thing === undefined) return undefined;
  const { declared } = thing;
  if (wanted === declared.name) return { edits: [] };
  if (wanted.length > longestName) return { refused: `a name has at most ${longestName} characters` };
  if (!nameShape.test(wanted)) return { refused: 'a name is letters, digits and `_`, with single `-` between them, and begins with a letter or `_`' };
  if (taken.has(wanted)) return { refused: `\`${wanted}\` is a word of the language` };
  const other = declared.kind === 'point' ? pointNamed(thing, wanted) : nameTaken(project, thing, day, wanted);
  if (other !== undefined) return { refused: `\`${wanted}\` is ${other}` };
  const edits = mentionsOf(project, thing, day);
  for (const changed of new Set(edits.map((e) => e.path))) {
    if (!readsTheSame(project.file(changed)!, edits.filter((e) => e.path === changed), wanted)) return { refused: `\`${wanted}\` means something else where this name is used` };
  }
  return { edits };
}

/** What has the name already, in any of the files that are read together with the declaration. */
function nameTaken(project: Project, thing: NamedThing, day: DayNumber, wanted: string): string | undefined {
  for (const root of project.rootsOf(homeOf(thing))) {
    const here = viewing(project, root, day);
    const other = here?.assessing.reader.declarations(wanted)[0];
    if (here !== undefined && other !== undefined) return `the name of a ${other.kind} already ${placed(thing, here.root, other.place)}`;
  }
  return undefined;
}

/** Points have their names from their vehicle alone. */
function pointNamed(thing: NamedThing, wanted: string): string | undefined {
  const { block } = thing.declared;
  for (const { definition, values } of block.statements) {
    const point = definition.head === 'point' ? newNameOf(values, 'name') : undefined;
    if (point?.name === wanted) return `a point of \`${block.name}\` already ${placed(thing, thing.view.root, point.place)}`;
  }
  return undefined;
}

/** Where it stands, as the file that was asked in sees it. */
const placed = ({ view }: NamedThing, root: ReadRoot, place: Place): string => `(${placeText({ ...view, root }, place)})`;

/** True when the chunks, with the new name in them, say as many names and problems as before: a word of the language as a name would not. */
function readsTheSame(file: RigFile, edits: readonly Reference[], wanted: string): boolean {
  for (const { chunk, offset } of file.chunks) {
    const inside = edits.filter((e) => offset <= e.start && e.end <= offset + chunk.text.length);
    if (inside.length === 0) continue;
    let text = chunk.text;
    for (const edit of [...inside].sort((a, b) => b.start - a.start)) text = text.slice(0, edit.start - offset) + wanted + text.slice(edit.end - offset);
    const [before, after] = [bindChunk(chunk), bindChunk(new Chunk(text))];
    if (before.problems.length !== after.problems.length || mentionsIn(before).length !== mentionsIn(after).length) return false;
  }
  return true;
}

