import type { Finding } from '../assess/finding.ts';
import type { Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { RigFile } from './rig-file.ts';
import { sameItems, sameProblems } from './root-state.ts';

/** What was found of a root, file by file. */
export type FoundByFile = ReadonlyMap<string, readonly Finding[]>;

/** What is kept of a root that rests: what was found of it, for as long as its text is the same. */
export class RestingRoot {
  readonly #contents: readonly (readonly Chunk[])[];
  readonly #problems: readonly Problem[];
  readonly #found: ReadonlyMap<DayNumber, FoundByFile>;

  constructor(files: readonly RigFile[], problems: readonly Problem[], found: ReadonlyMap<DayNumber, FoundByFile>) {
    this.#contents = files.map((file) => file.content);
    this.#problems = problems;
    this.#found = found;
  }

  /** What was found of it on a day; undefined when that was never asked for, and when its text is another one by now. */
  found(day: DayNumber, files: readonly RigFile[], problems: readonly Problem[]): FoundByFile | undefined {
    const found = this.#found.get(day);
    return found !== undefined && sameItems(this.#contents, files.map((file) => file.content)) && sameProblems(this.#problems, problems) ? found : undefined;
  }
}

/** How many chunks the roots may have that are kept as they were worked out, and how many roots are kept whatever they have. */
export interface MostAtWork {
  /** Those of which nobody was told to the end: what was read of them is read again when it is their turn. */
  readonly begun: number;
  /** Those that were told once: whoever opens a thousand files looks at a few of them. */
  readonly told: number;
  /** Those that were told again after an edit. */
  readonly edited: number;
  /** The latest of each sort, however long they are. */
  readonly latest: number;
}

/** Roots with the files that each takes in, the one that came last at the end. */
class Roots {
  readonly files = new Map<string, readonly RigFile[]>();
  size = 0;

  set(root: string, files: readonly RigFile[]): void {
    this.files.set(root, files);
    this.size += sizeOf(files);
  }

  /** Other files for a root that stays where it is. */
  replace(root: string, files: readonly RigFile[]): void {
    this.size -= sizeOf(this.files.get(root)!);
    this.set(root, files);
  }

  /** What it took in; undefined when it was not there. */
  delete(root: string): readonly RigFile[] | undefined {
    const files = this.files.get(root);
    if (files !== undefined) this.size -= sizeOf(files);
    this.files.delete(root);
    return files;
  }
}

/** The roots of which everything is kept that was worked out. */
export class WorkingRoots {
  /** Nobody was told of them yet. */
  readonly #begun = new Roots();
  readonly #told = new Roots();
  readonly #edited = new Roots();
  /** How many of them take a file in. */
  readonly #takenIn = new Map<string, number>();

  takesIn(path: string): boolean {
    return this.#takenIn.has(path);
  }

  /** A root takes in these files. Where it stands stays as it is. */
  add(root: string, files: readonly RigFile[]): void {
    for (const { path } of files) this.#takenIn.set(path, (this.#takenIn.get(path) ?? 0) + 1);
    const group = this.#groupOf(root);
    if (group === undefined) return this.#begun.set(root, files);
    this.#leave(group.files.get(root)!);
    group.replace(root, files);
  }

  /** What it comes to was told: for the first time, or after an edit. */
  told(root: string, edited: boolean): void {
    if (edited || this.#begun.files.has(root)) this.#move(root, edited ? this.#edited : this.#told);
  }

  /** The next root that is to rest, with what it takes in. */
  next({ begun, told, edited, latest }: MostAtWork): [string, readonly RigFile[]] | undefined {
    for (const [group, most] of [[this.#told, told], [this.#edited, edited], [this.#begun, begun]] as const) {
      if (group.size > most && group.files.size > latest) return group.files.entries().next().value;
    }
    return undefined;
  }

  /** There is more to do on it before it is told of: of those begun, it comes last. */
  begin(root: string): void {
    this.#move(root, this.#begun);
  }

  hasBegun(root: string): boolean {
    return this.#begun.files.has(root);
  }

  #move(root: string, to: Roots): void {
    const files = this.#groupOf(root)?.delete(root);
    if (files !== undefined) to.set(root, files);
  }

  remove(root: string): void {
    const group = this.#groupOf(root);
    if (group === undefined) return;
    this.#leave(group.files.get(root)!);
    group.delete(root);
  }

  #groupOf(root: string): Roots | undefined {
    return [this.#begun, this.#told, this.#edited].find(({ files }) => files.has(root));
  }

  #leave(files: readonly RigFile[]): void {
    for (const { path } of files) {
      const left = this.#takenIn.get(path)! - 1;
      if (left > 0) this.#takenIn.set(path, left);
      else this.#takenIn.delete(path);
    }
  }
}

const sizeOf = (files: readonly RigFile[]): number => files.reduce((sum, file) => sum + file.size, 0);
