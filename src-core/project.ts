import { LineIndex } from './base/line-index.ts';
import type { Place, Span } from './base/span.ts';
import type { Finding } from './assess/finding.ts';
import { bindChunk } from './model/bind-chunk.ts';
import type { BoundBlock, BoundChunk, Problem } from './model/bound.ts';
import type { DayNumber } from './model/day.ts';
import { Scope, stillAnswers } from './model/scope.ts';
import { applyAllowances } from './rules/allowances.ts';
import { findingOfProblem, judgeBlock, type JudgedBlock } from './rules/judge-block.ts';
import { missingFacts } from './rules/missing-fact.ts';
import { resplitChunks, splitChunks, type Chunk, type Edit, type PlacedChunk } from './syntax/chunk.ts';
import { resolveUse } from './use-path.ts';
import { topHeads } from './vocabulary/vocabulary.ts';

/** A file of the project, cut into chunks. A value: an edit makes a new one that shares the chunks it did not touch. */
export class RigFile {
  readonly path: string;
  readonly text: string;
  readonly chunks: readonly PlacedChunk[];
  #lines: LineIndex | undefined;
  #offsets: Map<object, number> | undefined;

  private constructor(path: string, text: string, chunks: readonly PlacedChunk[]) {
    this.path = path;
    this.text = text;
    this.chunks = chunks;
  }

  static read(path: string, text: string): RigFile {
    return new RigFile(path, text, splitChunks(text, topHeads));
  }

  edited(edit: Edit): RigFile {
    const text = this.text.slice(0, edit.start) + edit.text + this.text.slice(edit.end);
    return new RigFile(this.path, text, resplitChunks(this.chunks, edit, text, topHeads));
  }

  get lines(): LineIndex {
    this.#lines ??= new LineIndex(this.text);
    return this.#lines;
  }

  /** Where a chunk begins; undefined when it is not of this file. */
  offsetOf(chunk: object): number | undefined {
    this.#offsets ??= new Map(this.chunks.map((c) => [c.chunk, c.offset]));
    return this.#offsets.get(chunk);
  }

  /** A place as offsets of this file. */
  spanOf(place: Place): Span | undefined {
    const offset = this.offsetOf(place.chunk);
    return offset === undefined ? undefined : { start: offset + place.start, end: offset + place.end };
  }

  /** The chunk at an offset, with the offset counted inside it. */
  chunkAt(offset: number): { readonly chunk: Chunk; readonly at: number } | undefined {
    let low = 0;
    let high = this.chunks.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (this.chunks[mid]!.offset <= offset) low = mid;
      else high = mid - 1;
    }
    const found = this.chunks[low];
    return found === undefined ? undefined : { chunk: found.chunk, at: offset - found.offset };
  }

  get bound(): readonly BoundChunk[] {
    return this.chunks.map((c) => bindChunk(c.chunk));
  }
}

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
}

/** Why a used file is not there. */
export type Absence = 'missing' | 'unreadable' | 'not-text' | 'a-folder' | 'outside';

/**
 * The rig files of one workspace folder, by path from that folder with `/` between names. Holds text and results;
 * reading files is for the shell, which asks `wanted()` what is still needed.
 */
export class Project {
  readonly #files = new Map<string, RigFile>();
  readonly #absent = new Map<string, Absence>();
  readonly #kept = new Map<string, Map<BoundBlock, JudgedBlock>>();
  readonly #judged = new Map<string, JudgedRoot>();

  get paths(): Iterable<string> {
    return this.#files.keys();
  }

  file(path: string): RigFile | undefined {
    return this.#files.get(path);
  }

  set(path: string, text: string): void {
    const before = this.#files.get(path);
    if (before?.text === text) return;
    this.#files.set(path, before === undefined ? RigFile.read(path, text) : before.edited(differenceOf(before.text, text)));
    this.#absent.delete(path);
    this.#judged.clear();
  }

  edit(path: string, edit: Edit): void {
    const before = this.#files.get(path);
    if (before === undefined) return;
    this.#files.set(path, before.edited(edit));
    this.#judged.clear();
  }

  remove(path: string): void {
    this.#files.delete(path);
    this.#absent.delete(path);
    this.#kept.delete(path);
    this.#judged.clear();
  }

  setAbsent(path: string, why: Absence): void {
    this.#files.delete(path);
    this.#absent.set(path, why);
    this.#judged.clear();
  }

  /** Forgets that a file is absent, so that it is wanted again. */
  retry(path: string): void {
    if (this.#absent.delete(path)) this.#judged.clear();
  }

  /** Paths of used files that were neither set nor said to be absent. */
  wanted(): string[] {
    const wanted = new Set<string>();
    for (const file of this.#files.values()) {
      for (const used of this.#uses(file)) {
        if (used.path !== undefined && !this.#files.has(used.path) && !this.#absent.has(used.path)) wanted.add(used.path);
      }
    }
    return [...wanted];
  }

  *#uses(file: RigFile): Generator<{ readonly path: string | undefined; readonly place: Place; readonly written: string }> {
    for (const chunk of file.bound) for (const use of chunk.uses) yield { path: resolveUse(file.path, use.path), place: use.place, written: use.path };
  }

  /** Files that no other file uses, and one of each loop of files that use each other. */
  roots(): string[] {
    const used = new Set<string>();
    for (const file of this.#files.values()) for (const u of this.#uses(file)) if (u.path !== undefined && u.path !== file.path) used.add(u.path);
    const roots = [...this.#files.keys()].filter((p) => !used.has(p)).sort();
    const reached = new Set<string>();
    for (const root of roots) for (const p of this.#closure(root).order) reached.add(p);
    for (const path of [...this.#files.keys()].sort()) {
      if (reached.has(path)) continue;
      roots.push(path);
      for (const p of this.#closure(path).order) reached.add(p);
    }
    return roots;
  }

  /** The roots that take a file in; the file itself when none does. */
  rootsOf(path: string): string[] {
    return this.roots().filter((root) => root === path || this.#closure(root).order.includes(path));
  }

  /** Used files first, the root last; each once. Problems stand at the `use`. */
  #closure(root: string): { readonly order: readonly string[]; readonly problems: readonly Problem[] } {
    const order: string[] = [];
    const problems: Problem[] = [];
    const state = new Map<string, 'open' | 'done'>();
    const stack: { file: RigFile; uses: Iterator<{ path: string | undefined; place: Place; written: string }> }[] = [];
    const open = (file: RigFile): void => {
      state.set(file.path, 'open');
      stack.push({ file, uses: this.#uses(file) });
    };
    const start = this.#files.get(root);
    if (start !== undefined) open(start);
    while (stack.length > 0) {
      const top = stack.at(-1)!;
      const next = top.uses.next();
      if (next.done === true) {
        stack.pop();
        state.set(top.file.path, 'done');
        order.push(top.file.path);
        continue;
      }
      const { path, place, written } = next.value;
      if (path === undefined) {
        problems.push({ code: 'use-outside', place, message: `\`${written}\` leads out of the workspace folder`, help: 'keep shared files inside the folder, and write the path from this file with `/`' });
        continue;
      }
      const file = this.#files.get(path);
      if (file === undefined) problems.push(absenceProblem(this.#absent.get(path), written, place));
      else if (state.get(path) === 'open') problems.push({ code: 'use-loop', place, message: path === top.file.path ? 'this file uses itself' : `\`${written}\` uses this file in turn`, help: 'move what both need into a third file' });
      else if (!state.has(path)) open(file);
    }
    return { order, problems };
  }

  judge(root: string, day: DayNumber): JudgedRoot {
    const key = `${day} ${root}`;
    const known = this.#judged.get(key);
    if (known !== undefined) return known;
    const { order, problems } = this.#closure(root);
    const files = order.map((p) => this.#files.get(p)!);
    const scope = new Scope(files.flatMap((f) => f.bound));
    const before = this.#kept.get(key) ?? new Map<BoundBlock, JudgedBlock>();
    const kept = new Map<BoundBlock, JudgedBlock>();
    const judged = new Map<string, JudgedFile>();
    const all: JudgedBlock[] = [];
    const perFile = files.map((file) => {
      const blocks: JudgedBlock[] = [];
      for (const chunk of file.bound) {
        for (const block of chunk.blocks) {
          const old = before.get(block);
          const result = old !== undefined && stillAnswers(scope, old.asked) ? old : judgeBlock(block, scope, day);
          kept.set(block, result);
          blocks.push(result);
        }
      }
      all.push(...blocks);
      return { file, blocks };
    });
    const missing = missingFacts(all);
    for (const { file, blocks } of perFile) {
      const found: Finding[] = [];
      for (const chunk of file.bound) found.push(...chunk.problems.map(findingOfProblem));
      for (const block of blocks) found.push(...block.findings);
      // A finding on a repair's or chain's line may stand in another file: each file shows its own.
      const own = [...found, ...problems.map(findingOfProblem), ...missing].filter((f) => file.offsetOf(f.place.chunk) !== undefined);
      const foreign = all.flatMap((b) => (blocks.includes(b) ? [] : b.findings.filter((f) => file.offsetOf(f.place.chunk) !== undefined)));
      judged.set(file.path, { file, blocks, findings: inOrder(file, applyAllowances(file.bound, [...own, ...foreign])) });
    }
    this.#kept.set(key, kept);
    const result: JudgedRoot = { root, day, scope, files: judged };
    this.#judged.set(key, result);
    return result;
  }

  /** Findings of a file under every root that takes it in, each once. */
  findings(path: string, day: DayNumber): readonly Finding[] {
    const file = this.#files.get(path);
    if (file === undefined) return [];
    const lists = this.rootsOf(path).map((root) => this.judge(root, day).files.get(path)?.findings ?? []);
    return lists.length === 1 ? lists[0]! : inOrder(file, lists.flat());
  }
}

function absenceProblem(why: Absence | undefined, written: string, place: Place): Problem {
  const says: Record<Absence, string> = {
    missing: `\`${written}\` is not there`,
    unreadable: `\`${written}\` cannot be read`,
    'not-text': `\`${written}\` is not text in UTF-8`,
    'a-folder': `\`${written}\` is a folder`,
    outside: `\`${written}\` leads out of the workspace folder`,
  };
  return { code: why === 'outside' ? 'use-outside' : 'use-missing', place, message: says[why ?? 'missing'], help: why === 'outside' ? 'keep shared files inside the folder' : 'correct the path, which starts at this file\'s folder' };
}

/** By place, then by code; the same said twice is said once. */
function inOrder(file: RigFile, findings: readonly Finding[]): Finding[] {
  const keyed = findings.map((finding) => ({ finding, span: file.spanOf(finding.place)! }));
  keyed.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end || compareText(a.finding.code, b.finding.code) || compareText(a.finding.message, b.finding.message));
  return keyed.filter((k, i) => {
    const last = keyed[i - 1];
    return last === undefined || last.span.start !== k.span.start || last.span.end !== k.span.end || last.finding.code !== k.finding.code || last.finding.message !== k.finding.message;
  }).map((k) => k.finding);
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The smallest replacement that turns one text into the other. */
export function differenceOf(before: string, after: string): Edit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === after.charCodeAt(start)) start++;
  let tail = 0;
  while (tail < most - start && before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)) tail++;
  return { start, end: before.length - tail, text: after.slice(start, after.length - tail) };
}
