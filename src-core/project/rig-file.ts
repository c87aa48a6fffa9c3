import { LineIndex } from '../base/line-index.ts';
import type { Place, Span } from '../base/span.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import type { BoundChunk, BoundUse } from '../model/bound.ts';
import { resplitChunks, splitChunks, type Chunk, type Edit, type PlacedChunk } from '../syntax/chunk.ts';
import { topHeads } from '../vocabulary/vocabulary.ts';

/** A file of the project, cut into chunks. A value: an edit makes a new one that shares the chunks it did not touch. */
export class RigFile {
  readonly path: string;
  readonly text: string;
  readonly chunks: readonly PlacedChunk[];
  #lines: LineIndex | undefined;
  #indexes: Map<object, number> | undefined;
  #bound: readonly BoundChunk[] | undefined;

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
    const file = new RigFile(this.path, text, resplitChunks(this.chunks, edit, text, topHeads));
    if (this.#lines !== undefined) file.#lines = this.#lines.edited(text, edit.start, edit.end, edit.text.length);
    return file;
  }

  get lines(): LineIndex {
    this.#lines ??= new LineIndex(this.text);
    return this.#lines;
  }

  /** Which of the file's chunks this is, counted from the top; undefined when it is not of this file. */
  indexOf(chunk: object): number | undefined {
    if (this.#indexes === undefined) {
      this.#indexes = new Map();
      for (let i = 0; i < this.chunks.length; i++) this.#indexes.set(this.chunks[i]!.chunk, i);
    }
    return this.#indexes.get(chunk);
  }

  /** Where a chunk begins; undefined when it is not of this file. */
  offsetOf(chunk: object): number | undefined {
    const index = this.indexOf(chunk);
    return index === undefined ? undefined : this.chunks[index]!.offset;
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
    this.#bound ??= this.chunks.map((c) => bindChunk(c.chunk));
    return this.#bound;
  }

  *uses(): Generator<BoundUse> {
    for (const chunk of this.bound) yield* chunk.uses;
  }
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
