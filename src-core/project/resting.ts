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
    this.delete(root);
    this.files.set(root, files);
    this.size += sizeOf(files);
  }

  delete(root: string): boolean {
    const files = this.files.get(root);
    if (files === undefined) return false;
    this.size -= sizeOf(files);
    return this.files.delete(root);
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

  /** A root takes in these files. */
  add(root: string, files: readonly RigFile[]): void {
    const group = this.#groupOf(root);
    for (const { path } of files) this.#takenIn.set(path, (this.#takenIn.get(path) ?? 0) + 1);
    if (group !== undefined) this.#leave(group.files.get(root)!);
    // Where it stands stays as it is.
    if (group === undefined) this.#begun.set(root, files);
    else {
      group.size += sizeOf(files) - sizeOf(group.files.get(root)!);
      group.files.set(root, files);
    }
  }

  /** What it comes to was told: for the first time, or after an edit. */
  told(root: string, edited: boolean): void {
    const group = this.#groupOf(root);
    if (group === undefined || (!edited && group !== this.#begun)) return;
    const files = group.files.get(root)!;
    group.delete(root);
    (edited ? this.#edited : this.#told).set(root, files);
  }

  /** The next root that is to rest, with what it takes in. */
  next({ told, edited, latest }: MostAtWork): [string, readonly RigFile[]] | undefined {
    for (const [group, most] of [[this.#told, told], [this.#edited, edited]] as const) {
      if (group.size > most && group.files.size > latest) return group.files.entries().next().value;
    }
    return undefined;
  }

  /** It cannot rest: it is told of again before long. */
  begin(root: string): void {
    const group = this.#groupOf(root);
    const files = group?.files.get(root);
    if (group === undefined || files === undefined) return;
    group.delete(root);
    this.#begun.set(root, files);
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
