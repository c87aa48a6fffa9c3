import { countUpTo, type LineIndex } from '../base/line-index.ts';
import type { Place, Span } from '../base/span.ts';
import { bindAside, bindChunk, forgetBound, mayUse } from '../model/bind-chunk.ts';
import type { BoundChunk, BoundUse } from '../model/bound.ts';
import { resplitChunks, splitChunks, type Chunk, type Edit, type PlacedChunk, type Resplit } from '../syntax/chunk.ts';
import { topHeads } from '../vocabulary/vocabulary.ts';
import { FileLines } from './file-lines.ts';

/**
 * A file of the project, cut into chunks. A value: an edit makes a new one that shares the chunks it did not touch.
 * What is kept for the whole file is flat lists of numbers and references, which an edit copies faster than any search
 * tree would be mended; the text itself is put together only when somebody asks for it.
 */
export class RigFile {
  readonly path: string;
  readonly #list: readonly Chunk[];
  /** Where each chunk begins; last, the length of the text. */
  readonly #offsets: Int32Array;
  /** Where a chunk was last seen in the list; shared with the files this one came from, so it is looked up, not trusted. */
  readonly #seen: WeakMap<object, number>;
  #text: string | undefined;
  #placed: readonly PlacedChunk[] | undefined;
  #lines: FileLines | undefined;
  /** Chunks that came with an edit are bound when somebody asks, since the next edit may take them away again. */
  #bound: (BoundChunk | undefined)[] | undefined;
  #allBound = false;
  #uses: readonly BoundUse[] | undefined;

  private constructor(path: string, list: readonly Chunk[], offsets: Int32Array, seen: WeakMap<object, number>) {
    this.path = path;
    this.#list = list;
    this.#offsets = offsets;
    this.#seen = seen;
  }

  static read(path: string, text: string): RigFile {
    const placed = splitChunks(text, topHeads);
    const offsets = new Int32Array(placed.length + 1);
    placed.forEach((c, i) => (offsets[i] = c.offset));
    offsets[placed.length] = text.length;
    const seen = new WeakMap<object, number>();
    placed.forEach((c, i) => seen.set(c.chunk, i));
    const file = new RigFile(path, placed.map((c) => c.chunk), offsets, seen);
    file.#text = text;
    return file;
  }

  edited(edit: Edit): RigFile {
    const { from, removed, added } = resplitChunks(this.#list, this.#offsets, edit, topHeads);
    const list = spliced(this.#list, from, removed, added);
    const offsets = new Int32Array(list.length + 1);
    offsets.set(this.#offsets.subarray(0, from));
    let at = this.#offsets[from] ?? 0;
    added.forEach((chunk, i) => {
      offsets[from + i] = at;
      this.#seen.set(chunk, from + i);
      at += chunk.text.length;
    });
    const delta = at - this.#offsets[from + removed]!;
    for (let i = from + removed; i < this.#offsets.length; i++) offsets[i - removed + added.length] = this.#offsets[i]! + delta;
    const file = new RigFile(this.path, list, offsets, this.#seen);
    this.#handOn(file, { from, removed, added });
    return file;
  }

  /** What was worked out of this file, for the one that came of it. */
  #handOn(file: RigFile, { from, removed, added }: Resplit): void {
    if (this.#lines !== undefined) file.#lines = this.#lines.edited(file, file.#list, file.#offsets, from, removed);
    const gone = this.#list.slice(from, from + removed);
    if (!added.some(mayUse) && !gone.some(mayUse)) file.#uses = this.#uses;
    if (this.#bound === undefined) return;
    const bound = this.#bound.slice(from, from + removed);
    const indexes = removed > few ? new Map(gone.map((chunk, i) => [chunk, i])) : undefined;
    const indexOf = (chunk: Chunk): number => (indexes === undefined ? gone.indexOf(chunk) : (indexes.get(chunk) ?? -1));
    file.#bound = spliced(this.#bound, from, removed, added.map((chunk) => bound[indexOf(chunk)]));
  }

  get text(): string {
    this.#text ??= this.#list.map((c) => c.text).join('');
    return this.#text;
  }

  get length(): number {
    return this.#offsets[this.#list.length]!;
  }

  /** The chunks with where they stand. */
  get chunks(): readonly PlacedChunk[] {
    this.#placed ??= this.#list.map((chunk, i) => ({ chunk, offset: this.#offsets[i]! }));
    return this.#placed;
  }

  get lines(): LineIndex {
    this.#lines ??= new FileLines(this, this.#list, this.#offsets);
    return this.#lines;
  }

  /** Which of the file's chunks this is, counted from the top; undefined when it is not of this file. */
  indexOf(chunk: object): number | undefined {
    const seen = this.#seen.get(chunk);
    if (seen === undefined || this.#list[seen] === chunk) return seen;
    // Edits above have moved it: it is looked for around the place where it was.
    for (let d = 1; d <= Math.max(seen, this.#list.length - seen); d++) {
      for (const i of [seen + d, seen - d]) {
        if (i < 0 || this.#list.length <= i || this.#list[i] !== chunk) continue;
        this.#seen.set(chunk, i);
        return i;
      }
    }
    return undefined;
  }

  /** Where a chunk begins; undefined when it is not of this file. */
  offsetOf(chunk: object): number | undefined {
    const index = this.indexOf(chunk);
    return index === undefined ? undefined : this.#offsets[index]!;
  }

  /** A place as offsets of this file. */
  spanOf(place: Place): Span | undefined {
    const offset = this.offsetOf(place.chunk);
    return offset === undefined ? undefined : { start: offset + place.start, end: offset + place.end };
  }

  /** The chunk at an offset, with the offset counted inside it. */
  chunkAt(offset: number): { readonly chunk: Chunk; readonly at: number } | undefined {
    const index = Math.max(0, countUpTo(this.#offsets, offset, this.#list.length) - 1);
    const chunk = this.#list[index];
    return chunk === undefined ? undefined : { chunk, at: offset - this.#offsets[index]! };
  }

  get bound(): readonly BoundChunk[] {
    if (!this.#allBound) {
      const bound = (this.#bound ??= Array.from({ length: this.#list.length }, () => undefined));
      for (let i = 0; i < bound.length; i++) bound[i] ??= bindChunk(this.#list[i]!);
      this.#allBound = true;
    }
    return this.#bound as BoundChunk[];
  }

  /** Every `use` of the file. The same list while no edit touches one. Nothing else of the file is read for it. */
  get uses(): readonly BoundUse[] {
    this.#uses ??= this.#list.flatMap((chunk) => (mayUse(chunk) ? bindAside(chunk).uses : []));
    return this.#uses;
  }

  /** How many chunks it has. */
  get size(): number {
    return this.#list.length;
  }

  /** Its chunks: the same list for as long as the text is the same. */
  get content(): readonly Chunk[] {
    return this.#list;
  }

  /** The same file without what its chunks say. Whoever holds this one keeps what it has. */
  unbound(): RigFile {
    this.#list.forEach(forgetBound);
    const file = new RigFile(this.path, this.#list, this.#offsets, this.#seen);
    file.#text = this.#text;
    file.#lines = this.#lines?.of(file);
    file.#uses = this.#uses;
    return file;
  }
}

/** So many are looked through faster than a table of them is made. */
const few = 16;

function spliced<T>(list: readonly T[], from: number, removed: number, added: readonly T[]): T[] {
  // Most edits keep the number of chunks: then nothing has to move.
  if (added.length !== removed) return [...list.slice(0, from), ...added, ...list.slice(from + removed)];
  const result = list.slice();
  added.forEach((item, i) => (result[from + i] = item));
  return result;
}

/** The smallest replacement that turns one text into the other. */
export function differenceOf(before: string, after: string): Edit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === after.charCodeAt(start)) start++;
  let tail = 0;
  while (tail < most - start && before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)) tail++;
  return { start, end: before.length - tail, text: after.slice(start, after.length - tail) };
}
