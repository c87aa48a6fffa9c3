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

/** The roots that are at work, the one that was asked for last at the end, each with the files that it takes in. */
export class WorkingRoots {
  readonly #files = new Map<string, readonly RigFile[]>();
  /** How many of them take a file in. */
  readonly #takenIn = new Map<string, number>();
  #size = 0;

  /** Chunks of all of them together; those of a file that several take in count for each. */
  get size(): number {
    return this.#size;
  }

  get count(): number {
    return this.#files.size;
  }

  takesIn(path: string): boolean {
    return this.#takenIn.has(path);
  }

  /** A root is asked for, and takes in these files. */
  add(root: string, files: readonly RigFile[]): void {
    this.remove(root);
    this.#files.set(root, files);
    this.#size += sizeOf(files);
    for (const file of files) {
      this.#takenIn.set(file.path, (this.#takenIn.get(file.path) ?? 0) + 1);
    }
  }

  remove(root: string): void {
    const files = this.#files.get(root);
    if (files === undefined) return;
    this.#files.delete(root);
    this.#size -= sizeOf(files);
    for (const file of files) {
      const left = this.#takenIn.get(file.path)! - 1;
      if (left > 0) this.#takenIn.set(file.path, left);
      else this.#takenIn.delete(file.path);
    }
  }

  /** The roots with what they take in, but for so many that were asked for last; the longest ago first. */
  before(latest: number): [string, readonly RigFile[]][] {
    return [...this.#files].slice(0, Math.max(0, this.#files.size - latest));
  }
}

export const sizeOf = (files: readonly RigFile[]): number => files.reduce((sum, file) => sum + file.size, 0);
