import type { Finding } from './assess/finding.ts';
import type { Problem } from './model/bound.ts';
import type { DayNumber } from './model/day.ts';
import { differenceOf, RigFile } from './project/rig-file.ts';
import { RestingRoot, WorkingRoots, type FoundByFile, type MostAtWork } from './project/resting.ts';
import { inOrder, RootState, type JudgedRoot, type ReadRoot } from './project/root-state.ts';
import { closureOf, rootsAmong, usesIn, type Absence } from './project/use-graph.ts';
import type { Edit } from './syntax/chunk.ts';

export { differenceOf, RigFile } from './project/rig-file.ts';
export type { JudgedFile, JudgedRoot, ReadRoot } from './project/root-state.ts';
export type { MostAtWork } from './project/resting.ts';
export type { Absence } from './project/use-graph.ts';

/**
 * The rig files of one workspace folder, by path from that folder with `/` between names. Holds text and results;
 * reading files is for the shell, which asks `wanted()` what is still needed.
 */
export class Project {
  readonly #files = new Map<string, RigFile>();
  readonly #absent = new Map<string, Absence>();
  /** By root, then by day. */
  readonly #states = new Map<string, Map<DayNumber, RootState>>();
  readonly #judged = new Map<string, Map<DayNumber, JudgedRoot>>();
  readonly #working = new WorkingRoots();
  readonly #resting = new Map<string, RestingRoot>();
  #graph: ReturnType<typeof rootsAmong> | undefined;
  #wanted: Set<string> | undefined;

  get paths(): Iterable<string> {
    return this.#files.keys();
  }

  file(path: string): RigFile | undefined {
    return this.#files.get(path);
  }

  set(path: string, text: string): void {
    const before = this.#files.get(path);
    if (before !== undefined && before.length === text.length && before.text === text) return;
    this.#put(before, before === undefined ? RigFile.read(path, text) : before.edited(differenceOf(before.text, text)));
  }

  edit(path: string, edit: Edit): void {
    const before = this.#files.get(path);
    if (before !== undefined) this.#put(before, before.edited(edit));
  }

  #put(before: RigFile | undefined, file: RigFile): void {
    const { path } = file;
    this.#files.set(path, file);
    if (before !== undefined && !this.#absent.has(path) && sameUses(before, file)) {
      // Only what takes this file in can come out differently.
      for (const root of this.rootsOf(path)) this.#judged.delete(root);
    } else {
      this.#absent.delete(path);
      const wanted = before === undefined ? this.#wanted : undefined;
      this.#forgetUses();
      // Files come by the thousand: what one more wants is added to what was wanted.
      if (wanted === undefined) return;
      wanted.delete(path);
      this.#addWanted(file, wanted);
      this.#wanted = wanted;
    }
  }

  #addWanted(file: RigFile, wanted: Set<string>): void {
    for (const { path } of usesIn(file)) if (path !== undefined && !this.#files.has(path) && !this.#absent.has(path)) wanted.add(path);
  }

  #forgetUses(): void {
    this.#graph = undefined;
    this.#wanted = undefined;
    this.#judged.clear();
  }

  remove(path: string): void {
    this.#files.delete(path);
    this.#absent.delete(path);
    this.#forgetState(path);
    this.#forgetUses();
  }

  #forgetState(root: string): void {
    for (const state of this.#states.get(root)?.values() ?? []) state.end();
    this.#states.delete(root);
    this.#working.remove(root);
  }

  setAbsent(path: string, why: Absence): void {
    this.remove(path);
    this.#absent.set(path, why);
  }

  /** Forgets that a file is absent, or what lies in a folder of the name, so that it is wanted again. True when anything is. */
  retry(path: string): boolean {
    const again = [...this.#absent.keys()].filter((absent) => absent === path || absent.startsWith(`${path}/`));
    for (const absent of again) this.#absent.delete(absent);
    if (again.length > 0) this.#forgetUses();
    return again.length > 0;
  }

  /** Paths of used files that were neither set nor said to be absent. */
  wanted(): readonly string[] {
    if (this.#wanted === undefined) {
      const wanted = new Set<string>();
      for (const file of this.#files.values()) this.#addWanted(file, wanted);
      this.#wanted = wanted;
    }
    return [...this.#wanted];
  }

  #roots(): ReturnType<typeof rootsAmong> {
    if (this.#graph === undefined) {
      this.#graph = rootsAmong(this.#files);
      const roots = new Set(this.#graph.roots);
      for (const path of [...this.#states.keys()]) if (!roots.has(path)) this.#forgetState(path);
      for (const path of [...this.#resting.keys()]) if (!roots.has(path)) this.#resting.delete(path);
    }
    return this.#graph;
  }

  /** Files that no other file uses, and one of each loop of files that use each other. */
  roots(): readonly string[] {
    return this.#roots().roots;
  }

  /** The roots that take a file in; the file itself when none does. */
  rootsOf(path: string): readonly string[] {
    return this.#roots().reachedFrom.get(path) ?? [];
  }

  judge(root: string, day: DayNumber): JudgedRoot {
    const known = this.#judged.get(root)?.get(day);
    if (known !== undefined) return known;
    const { state, files, problems } = this.#stateOf(root, day);
    const edited = this.#resting.has(root) || (state.isWhole && !state.isJudged(files, problems));
    const result = state.update(files, problems);
    entryOf(this.#judged, root).set(day, result);
    this.#resting.delete(root);
    this.#working.told(root, edited);
    return result;
  }

  /**
   * A root for who asks what a block comes to: behind an edit nothing is judged for it that it did not ask. Judged to the end
   * where nobody is about to judge it.
   */
  read(root: string, day: DayNumber): ReadRoot {
    if (this.#states.get(root)?.has(day) !== true || this.#judged.get(root)?.has(day) === true) return this.judge(root, day);
    const { state, files, problems } = this.#stateOf(root, day);
    return state.read(files, problems);
  }

  /** How the text of a root now stands. */
  #textOf(root: string): { readonly files: readonly RigFile[]; readonly problems: readonly Problem[] } {
    const { order, problems } = closureOf(root, this.#files, this.#absent);
    return { files: order.map((p) => this.#files.get(p)!), problems };
  }

  /** What is kept of a root, and how its text now stands. */
  #stateOf(root: string, day: DayNumber): { readonly state: RootState; readonly files: readonly RigFile[]; readonly problems: readonly Problem[] } {
    const { files, problems } = this.#textOf(root);
    this.#working.add(root, files);
    const states = entryOf(this.#states, root);
    let state = states.get(day);
    if (state === undefined) {
      state = new RootState(root, day);
      states.set(day, state);
    }
    return { state, files, problems };
  }

  /** What was found of a root that rests; undefined when it does not, or has to be judged again. */
  #foundResting(root: string, day: DayNumber): FoundByFile | undefined {
    const resting = this.#resting.get(root);
    if (resting === undefined) return undefined;
    const { files, problems } = this.#textOf(root);
    return resting.found(day, files, problems);
  }

  /**
   * Lets the roots rest that were told of the longest ago, until those at work have at most so many chunks. Of one that rests what was found stays, where
   * it was judged, and the remainder is worked out again when somebody asks. Not to be called while somebody works with what a root or a file came to.
   */
  rest(most: MostAtWork): void {
    for (let next = this.#working.next(most); next !== undefined; next = this.#working.next(most)) {
      const [root, files] = next;
      const found = this.#foundAtWork(root);
      if (found === undefined && !this.#working.hasBegun(root)) {
        this.#working.begin(root);
        continue;
      }
      if (found !== undefined) this.#resting.set(root, new RestingRoot(files, this.#textOf(root).problems, found));
      this.#judged.delete(root);
      this.#forgetState(root);
      for (const { path } of files) {
        const file = this.#files.get(path);
        if (file !== undefined && !this.#working.takesIn(path)) this.#files.set(path, file.unbound());
      }
    }
  }

  /** What is found of a root on each day that it is judged for; undefined where that is not known, or not any more. */
  #foundAtWork(root: string): ReadonlyMap<DayNumber, FoundByFile> | undefined {
    const found = new Map<DayNumber, FoundByFile>();
    const { files, problems } = this.#textOf(root);
    for (const [day, state] of this.#states.get(root) ?? []) {
      if (!state.isJudged(files, problems)) return undefined;
      found.set(day, new Map([...state.update(files, problems).files].map(([path, { findings }]) => [path, findings])));
    }
    return found;
  }

  /** A root that was never judged to the end, with its text taken in; undefined for what is judged, and for what is no root. */
  #unjudged(root: string, day: DayNumber): RootState | undefined {
    if (this.#judged.get(root)?.has(day) === true || !this.rootsOf(root).includes(root) || this.#foundResting(root, day) !== undefined) return undefined;
    const { state, files, problems } = this.#stateOf(root, day);
    state.take(files, problems);
    return state.firstWork > 0 ? state : undefined;
  }

  /** How many blocks of a root are still to be judged before its findings are complete for the first time; 0 from then on. */
  firstWork(root: string, day: DayNumber): number {
    return this.#unjudged(root, day)?.firstWork ?? 0;
  }

  /** Judges at most so many of those blocks, and says how many are left. */
  judgeSome(root: string, day: DayNumber, most: number): number {
    const left = this.#unjudged(root, day)?.judgeSome(most) ?? 0;
    if (left > 0) this.#working.begin(root);
    return left;
  }

  /** What is found of a file without judging another block of it: for a reader who is told the rest later. Of roots that nobody has looked at one is enough for the text. */
  foundSoFar(path: string, day: DayNumber): readonly Finding[] {
    const [first] = this.rootsOf(path);
    return this.#merged(path, (root) => {
      if (root !== first && this.#states.get(root)?.has(day) !== true && !this.#resting.has(root)) return [];
      return this.#unjudged(root, day)?.foundSoFar(path) ?? this.#foundOf(root, path, day);
    });
  }

  /** Findings of a file under every root that takes it in, each once. */
  findings(path: string, day: DayNumber): readonly Finding[] {
    return this.#merged(path, (root) => this.#foundOf(root, path, day));
  }

  #foundOf(root: string, path: string, day: DayNumber): readonly Finding[] {
    return this.#foundResting(root, day)?.get(path) ?? this.judge(root, day).files.get(path)?.findings ?? [];
  }

  #merged(path: string, of: (root: string) => readonly Finding[]): readonly Finding[] {
    const file = this.#files.get(path);
    if (file === undefined) return [];
    const lists = this.rootsOf(path).map(of);
    return lists.length === 1 ? lists[0]! : inOrder(file, lists.flat());
  }

  /** What would be found under a root if a file of it were edited so. It costs what the edit would cost, and nothing of it is kept. */
  foundIf(root: string, path: string, edit: Edit, day: DayNumber): readonly Finding[] {
    const { state, files, problems } = this.#stateOf(root, day);
    const edited = files.map((file) => (file.path === path ? file.edited(edit) : file));
    const found = [...state.update(edited, problems).files.values()].flatMap(({ findings }) => findings);
    state.update(files, problems);
    return found;
  }

  /** The paths of a root and of all that it takes in. */
  filesOf(root: string): readonly string[] {
    return closureOf(root, this.#files, this.#absent).order;
  }

  /** Forgets what was judged on other days than this one. */
  keepOnly(day: DayNumber): void {
    for (const states of this.#states.values()) for (const other of [...states.keys()]) if (other !== day) states.delete(other);
    this.#judged.clear();
    this.#resting.clear();
  }
}

function entryOf<V>(map: Map<string, Map<DayNumber, V>>, root: string): Map<DayNumber, V> {
  let entry = map.get(root);
  if (entry === undefined) map.set(root, (entry = new Map()));
  return entry;
}

function sameUses(a: RigFile, b: RigFile): boolean {
  const [x, y] = [usesIn(a), usesIn(b)];
  return x === y || (x.length === y.length && x.every((u, i) => u.path === y[i]!.path));
}
