import type { Finding } from '../assess/finding.ts';
import type { BoundBlock, BoundChunk, Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { Scope } from '../model/scope.ts';
import { applyAllowances } from '../rules/allowances.ts';
import { findingOfProblem, judgeBlock, type JudgedBlock } from '../rules/judge-block.ts';
import { missingFacts } from '../rules/missing-fact.ts';
import type { RigFile } from './rig-file.ts';

/** Everything said about one file: what is wrong, and what every block comes to. */
export interface JudgedFile {
  readonly file: RigFile;
  readonly findings: readonly Finding[];
  readonly blocks: readonly JudgedBlock[];
}

/** A root file with all it uses, judged as one on a day. */
export interface JudgedRoot {
  readonly root: string;
  readonly day: DayNumber;
  readonly scope: Scope;
  readonly files: ReadonlyMap<string, JudgedFile>;
  judgedBlock(block: BoundBlock): JudgedBlock | undefined;
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
  readonly #askers = new Map<string, Set<BoundBlock>>();
  /** Blocks with findings or unjudged checks: all that a list of findings is made from. */
  readonly #speaking = new Set<BoundBlock>();
  /** Chunks with problems of their own or with allowances. */
  readonly #notable = new Set<BoundChunk>();
  #fileOfChunk = new Map<BoundChunk, number>();

  constructor(root: string, day: DayNumber) {
    this.root = root;
    this.day = day;
    this.#scope = this.#newScope();
  }

  #newScope(): Scope {
    return new Scope((chunk) => {
      const rank = this.#fileOfChunk.get(chunk) ?? 0;
      return rank * 2 ** 32 + (this.#files[rank]?.indexOf(chunk.chunk) ?? 0);
    });
  }

  /** The root as it now stands. `files` are in order of use, the root last. */
  update(files: readonly RigFile[], problems: readonly Problem[]): JudgedRoot {
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
      for (let i = start; i < a.length - tail; i++) removed.push(a[i]!);
      for (let i = start; i < b.length - tail; i++) added.push({ chunk: b[i]!, rank });
    });
    this.#files = files;
    for (const chunk of removed) this.#drop(chunk);
    const fresh: BoundBlock[] = [];
    for (const { chunk, rank } of added) {
      this.#fileOfChunk.set(chunk, rank);
      if (chunk.problems.length > 0 || chunk.allowances.length > 0) this.#notable.add(chunk);
      fresh.push(...chunk.blocks);
    }
    const changed = this.#scope.update(removed, added.map((a) => a.chunk));
    const dirty = new Set(fresh);
    for (const key of changed) for (const block of this.#askers.get(key) ?? []) dirty.add(block);
    for (const block of dirty) this.#judge(block);
    return this.#result(problems);
  }

  #forget(): void {
    this.#files = [];
    this.#scope = this.#newScope();
    this.#judged.clear();
    this.#askers.clear();
    this.#speaking.clear();
    this.#notable.clear();
    this.#fileOfChunk = new Map();
  }

  #drop(chunk: BoundChunk): void {
    this.#notable.delete(chunk);
    this.#fileOfChunk.delete(chunk);
    for (const block of chunk.blocks) {
      this.#unask(block);
      this.#judged.delete(block);
      this.#speaking.delete(block);
    }
  }

  #unask(block: BoundBlock): void {
    for (const key of this.#judged.get(block)?.asked ?? []) {
      const askers = this.#askers.get(key);
      askers?.delete(block);
      if (askers?.size === 0) this.#askers.delete(key);
    }
  }

  #judge(block: BoundBlock): void {
    this.#unask(block);
    const judged = judgeBlock(block, this.#scope, this.day);
    this.#judged.set(block, judged);
    for (const key of judged.asked) {
      const askers = this.#askers.get(key);
      if (askers === undefined) this.#askers.set(key, new Set([block]));
      else askers.add(block);
    }
    if (judged.findings.length > 0 || judged.notJudged.length > 0) this.#speaking.add(block);
    else this.#speaking.delete(block);
  }

  #result(problems: readonly Problem[]): JudgedRoot {
    const files = this.#files;
    const place = (block: BoundBlock): number => {
      const bound = this.#ranksOf(block);
      return bound.rank * 2 ** 40 + bound.index * 2 ** 12 + Math.min(4095, block.place.start);
    };
    const speaking = [...this.#speaking].map((b) => ({ b, at: place(b) })).sort((x, y) => x.at - y.at).map(({ b }) => this.#judged.get(b)!);
    const found: Finding[] = problems.map(findingOfProblem);
    for (const chunk of this.#notable) found.push(...chunk.problems.map(findingOfProblem));
    for (const judged of speaking) found.push(...judged.findings);
    found.push(...missingFacts(speaking));
    const notable = [...this.#notable];
    const judgedOf = (block: BoundBlock): JudgedBlock | undefined => this.#judged.get(block);
    const byFile = new Map<string, JudgedFile>();
    for (const file of files) {
      const own = found.filter((f) => file.indexOf(f.place.chunk) !== undefined);
      const allowing = notable.filter((c) => c.allowances.length > 0 && file.indexOf(c.chunk) !== undefined);
      const findings = inOrder(file, allowing.length === 0 ? own : applyAllowances(allowing, own));
      let blocks: readonly JudgedBlock[] | undefined;
      byFile.set(file.path, {
        file,
        findings,
        get blocks() {
          blocks ??= file.bound.flatMap((c) => c.blocks).map((b) => judgedOf(b)).filter((b): b is JudgedBlock => b !== undefined);
          return blocks;
        },
      });
    }
    return { root: this.root, day: this.day, scope: this.#scope, files: byFile, judgedBlock: judgedOf };
  }

  #ranksOf(block: BoundBlock): { rank: number; index: number } {
    for (let rank = 0; rank < this.#files.length; rank++) {
      const index = this.#files[rank]!.indexOf(block.chunk);
      if (index !== undefined) return { rank, index };
    }
    return { rank: 0, index: 0 };
  }
}

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
