import { AssessedBlocks } from '../assess/assessed-blocks.ts';
import { Practice } from '../assess/practice.ts';
import { Assessing } from '../assess/assessing.ts';
import type { Finding } from '../assess/finding.ts';
import type { BoundBlock, BoundChunk, Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { Reader, Scope } from '../model/scope.ts';
import { applyAllowances } from '../rules/allowances.ts';
import { shownAs } from '../rules/shown-as.ts';
import { findingOfProblem, judgeBlock, type JudgedBlock } from '../rules/judge-block.ts';
import { Askers } from './askers.ts';
import { MissingCauses } from './missing-causes.ts';
import type { RigFile } from './rig-file.ts';

/** Everything said about one file: what is wrong, and what every block comes to. */
export interface JudgedFile {
  readonly file: RigFile;
  readonly findings: readonly Finding[];
  readonly blocks: readonly JudgedBlock[];
}

/** A root file with all it uses, read as one on a day. */
export interface ReadRoot {
  readonly root: string;
  readonly day: DayNumber;
  readonly scope: Scope;
  readonly files: ReadonlyMap<string, { readonly file: RigFile }>;
  /** What blocks come to, with what was worked out while judging at hand. */
  readonly assessing: Assessing;
  /** Undefined for a block that waits to be judged. */
  judgedBlock(block: BoundBlock): JudgedBlock | undefined;
}

/** The same, judged to the end. */
export interface JudgedRoot extends ReadRoot {
  readonly files: ReadonlyMap<string, JudgedFile>;
}

/**
 * Keeps what is judged of a root from one state of its text to the next. A block is judged again when its own text
 * changed, or when something changed that it had asked its scope for.
 */
export class RootState {
  readonly root: string;
  readonly day: DayNumber;
  #files: readonly RigFile[] = [];
  #scope: Scope;
  readonly #judged = new Map<BoundBlock, JudgedBlock>();
  readonly #askers = new Askers();
  /** Blocks with findings. */
  readonly #speaking = new Set<BoundBlock>();
  readonly #missing = new MissingCauses();
  /** Chunks with problems of their own or with allowances. */
  readonly #notable = new Set<BoundChunk>();
  /** In which of the files a chunk stands. */
  readonly #rankOf = new Map<object, number>();
  readonly #assessed = new AssessedBlocks();
  readonly #judging = { assessing: (): Assessing => new Assessing(new Reader(this.#scope), this.day, this.#assessed) };
  /** Blocks that wait to be judged, or to be judged again. */
  readonly #waiting = new Set<BoundBlock>();
  /** Text that was taken in and that the scope does not know yet: whoever asks for no more than what stands there need not wait for it. */
  #unscoped: { readonly removed: readonly BoundChunk[]; readonly added: readonly BoundChunk[] } | undefined;
  #problems: readonly Problem[] = [];
  /** What it comes to; undefined until all that waits is judged. */
  #result: JudgedRoot | undefined;
  #whole = false;

  constructor(root: string, day: DayNumber) {
    this.root = root;
    this.day = day;
    this.#scope = this.#newScope();
  }

  #newScope(): Scope {
    return new Scope(({ chunk }) => {
      const rank = this.#rankOf.get(chunk) ?? 0;
      return rank * 2 ** 32 + (this.#files[rank]?.indexOf(chunk) ?? 0);
    });
  }

  /** The root as it now stands, judged to the end. `files` are in order of use, the root last. */
  update(files: readonly RigFile[], problems: readonly Problem[]): JudgedRoot {
    this.take(files, problems);
    this.judgeSome(Infinity);
    this.#whole = true;
    this.#result ??= this.#with(this.#judgedFiles(), (block) => this.#judged.get(block));
    return this.#result;
  }

  /** The root as it now stands, with no block judged for it: for who asks what a block comes to, and not what is wrong with it. */
  read(files: readonly RigFile[], problems: readonly Problem[]): ReadRoot {
    this.take(files, problems);
    this.#settleScope();
    return this.#result ?? this.#with(new Map(files.map((file) => [file.path, { file }])), (block) => (this.#waiting.has(block) ? undefined : this.#judged.get(block)));
  }

  #with<F>(files: ReadonlyMap<string, F>, judgedBlock: ReadRoot['judgedBlock']): Omit<ReadRoot, 'files'> & { readonly files: ReadonlyMap<string, F> } {
    const judging = this.#judging;
    let assessing: Assessing | undefined;
    return {
      root: this.root,
      day: this.day,
      scope: this.#scope,
      files,
      get assessing() {
        assessing ??= judging.assessing();
        return assessing;
      },
      judgedBlock,
    };
  }

  /** Nobody goes on with it: what was worked out lately is let go with the rest. */
  end(): void {
    this.#assessed.clear();
  }

  /** Whether it ever was judged to the end. */
  get isWhole(): boolean {
    return this.#whole;
  }

  /** Whether it is judged to the end as the text now stands. */
  isJudged(files: readonly RigFile[], problems: readonly Problem[]): boolean {
    return this.#result !== undefined && sameItems(files, this.#files) && sameProblems(problems, this.#problems);
  }

  /** How many blocks wait to be judged before anything of this root was told to the end; 0 from then on, since an edit is judged at once. */
  get firstWork(): number {
    return this.#whole ? 0 : this.#waiting.size;
  }

  /** What is found of a file while blocks wait: what is wrong with the text, and what the judged blocks come to. Never what a reason set aside for nothing. */
  foundSoFar(path: string): readonly Finding[] {
    return this.#judgedFiles().get(path)?.findings ?? [];
  }

  /** Judges so many of the blocks that wait, in the order of the text, and says how many still do. */
  judgeSome(most: number): number {
    this.#settleScope();
    let left = most;
    for (const block of this.#waiting) {
      if (left-- <= 0) break;
      this.#waiting.delete(block);
      this.#judge(block);
    }
    return this.#waiting.size;
  }

  /** Takes in how the text now stands, and judges nothing. */
  take(files: readonly RigFile[], problems: readonly Problem[]): void {
    if (sameItems(files, this.#files) && sameProblems(problems, this.#problems)) return;
    this.#settleScope();
    this.#problems = problems;
    this.#result = undefined;
    const removed: BoundChunk[] = [];
    const added: { chunk: BoundChunk; rank: number }[] = [];
    const sameOrder = files.length === this.#files.length && files.every((f, i) => f.path === this.#files[i]!.path);
    if (!sameOrder) this.#forget();
    const before = this.#files;
    files.forEach((file, rank) => {
      const old = sameOrder ? before[rank] : undefined;
      if (old === file) return;
      const [a, b] = [old?.bound ?? [], file.bound];
      let start = 0;
      while (start < a.length && start < b.length && a[start] === b[start]) start++;
      let tail = 0;
      while (tail < a.length - start && tail < b.length - start && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
      // Edits in several places leave chunks between them as they are.
      const [gone, come] = [new Set(a.slice(start, a.length - tail)), new Set(b.slice(start, b.length - tail))];
      for (const chunk of gone) if (!come.has(chunk)) removed.push(chunk);
      for (const chunk of come) if (!gone.has(chunk)) added.push({ chunk, rank });
    });
    this.#files = files;
    for (const chunk of removed) this.#drop(chunk);
    const fresh: BoundBlock[] = [];
    for (const { chunk, rank } of added) {
      this.#rankOf.set(chunk.chunk, rank);
      if (chunk.problems.length > 0 || chunk.allowances.length > 0) this.#notable.add(chunk);
      for (const block of chunk.blocks) fresh.push(block);
    }
    for (const block of fresh) this.#waiting.add(block);
    this.#unscoped = { removed, added: added.map((a) => a.chunk) };
  }

  /** Has the scope know the text that was taken in; whoever asked for what is another thing now waits to be judged again. */
  #settleScope(): void {
    if (this.#unscoped === undefined) return;
    const { removed, added } = this.#unscoped;
    this.#unscoped = undefined;
    // What another block had worked out of one that waits was asked by nobody who is known as asking.
    for (const block of this.#waiting) this.#assessed.forget(block);
    for (const key of this.#scope.update(removed, added)) {
      for (const block of this.#askers.of(key)) {
        this.#assessed.forget(block);
        this.#waiting.add(block);
      }
    }
  }

  #forget(): void {
    this.#files = [];
    this.#scope = this.#newScope();
    this.#unscoped = undefined;
    this.#judged.clear();
    this.#waiting.clear();
    this.#askers.clear();
    this.#speaking.clear();
    this.#missing.clear();
    this.#notable.clear();
    this.#rankOf.clear();
    this.#assessed.clear();
  }

  #drop(chunk: BoundChunk): void {
    this.#notable.delete(chunk);
    this.#rankOf.delete(chunk.chunk);
    for (const block of chunk.blocks) {
      this.#takeBack(block);
      this.#judged.delete(block);
      this.#waiting.delete(block);
      this.#assessed.forget(block);
    }
  }

  /** Undoes what judging a block left behind. */
  #takeBack(block: BoundBlock): void {
    const judged = this.#judged.get(block);
    if (judged === undefined) return;
    for (const key of judged.asked) this.#askers.remove(key, block);
    this.#speaking.delete(block);
    this.#missing.remove(judged);
  }

  #judge(block: BoundBlock): void {
    this.#takeBack(block);
    const judged = judgeBlock(block, this.#judging);
    AssessedBlocks.tidy();
    this.#judged.set(block, judged);
    for (const key of judged.asked) this.#askers.add(key, block);
    if (judged.findings.length > 0) this.#speaking.add(block);
    this.#missing.add(judged);
  }

  #judgedFiles(): ReadonlyMap<string, JudgedFile> {
    const speaking = [...this.#speaking].sort((a, b) => this.#compare(a, b));
    const practice = new Practice(new Reader(this.#scope));
    const found: Finding[] = [];
    const show = (finding: Finding): void => {
      const shown = shownAs(finding, practice);
      if (shown !== undefined) found.push(shown);
    };
    for (const problem of this.#problems) show(findingOfProblem(problem));
    for (const chunk of this.#notable) for (const problem of chunk.problems) show(findingOfProblem(problem));
    for (const block of speaking) for (const finding of this.#judged.get(block)!.findings) found.push(finding);
    for (const finding of this.#missing.findings((blocks) => this.#firstOf(blocks))) show(finding);
    const own = this.#byFile(found, (finding) => finding.place.chunk);
    const allowing = this.#byFile([...this.#notable].filter((c) => c.allowances.length > 0), (c) => c.chunk);
    const judgedOf = (block: BoundBlock): JudgedBlock | undefined => this.#judged.get(block);
    const complete = this.#waiting.size === 0;
    const byFile = new Map<string, JudgedFile>();
    this.#files.forEach((file, rank) => {
      const allowances = allowing.get(rank);
      const said = own.get(rank) ?? nothing;
      const findings = inOrder(file, allowances === undefined ? said : applyAllowances(allowances, said, complete));
      let blocks: readonly JudgedBlock[] | undefined;
      byFile.set(file.path, {
        file,
        findings,
        get blocks() {
          blocks ??= file.bound.flatMap((c) => c.blocks).map((b) => judgedOf(b)).filter((b): b is JudgedBlock => b !== undefined);
          return blocks;
        },
      });
    });
    return byFile;
  }

  #indexOf(block: BoundBlock): number {
    return this.#files[this.#rankOf.get(block.chunk) ?? 0]?.indexOf(block.chunk) ?? 0;
  }

  #compare(a: BoundBlock, b: BoundBlock): number {
    return (this.#rankOf.get(a.chunk) ?? 0) - (this.#rankOf.get(b.chunk) ?? 0) || this.#indexOf(a) - this.#indexOf(b) || a.place.start - b.place.start;
  }

  #firstOf(blocks: Iterable<BoundBlock>): BoundBlock {
    let first: BoundBlock | undefined;
    for (const block of blocks) if (first === undefined || this.#compare(block, first) < 0) first = block;
    return first!;
  }

  /** Things by the rank of the file in which their chunk stands; what stands in none is left out. */
  #byFile<T>(things: readonly T[], chunkOf: (thing: T) => object): Map<number, T[]> {
    const lists = new Map<number, T[]>();
    for (const thing of things) {
      const rank = this.#rankOf.get(chunkOf(thing));
      if (rank === undefined) continue;
      const list = lists.get(rank);
      if (list === undefined) lists.set(rank, [thing]);
      else list.push(thing);
    }
    return lists;
  }
}

const nothing: readonly Finding[] = [];

export const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean => a.length === b.length && a.every((item, i) => item === b[i]);

export const sameProblems = (a: readonly Problem[], b: readonly Problem[]): boolean =>
  a.length === b.length && a.every((p, i) => p.code === b[i]!.code && p.message === b[i]!.message && p.place.chunk === b[i]!.place.chunk && p.place.start === b[i]!.place.start);

/** By place, then by code and message; the same said twice is said once. */
export function inOrder(file: RigFile, findings: readonly Finding[]): Finding[] {
  const keyed = findings.map((finding) => ({ finding, span: file.spanOf(finding.place)! }));
  keyed.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end || compareText(a.finding.code, b.finding.code) || compareText(a.finding.message, b.finding.message));
  return keyed
    .filter((k, i) => {
      const last = keyed[i - 1];
      return last === undefined || last.span.start !== k.span.start || last.span.end !== k.span.end || last.finding.code !== k.finding.code || last.finding.message !== k.finding.message;
    })
    .map((k) => k.finding);
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
