import { countUpTo, type LineColumn, type LineIndex } from '../base/line-index.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { RigFile } from './rig-file.ts';

/** The lines of a file, from the lines of its chunks. No line break is cut in two by a chunk's end. */
export class FileLines implements LineIndex {
  readonly #file: RigFile;
  readonly #chunks: readonly Chunk[];
  readonly #offsets: Int32Array;
  /** Line breaks before each chunk; last, those of the whole file. */
  readonly #before: Int32Array;
  /** The chunk that was looked up last: most of what is asked stands in the same one, or in the next. */
  #last = 0;

  constructor(file: RigFile, chunks: readonly Chunk[], offsets: Int32Array, before?: Int32Array) {
    this.#file = file;
    this.#chunks = chunks;
    this.#offsets = offsets;
    this.#before = before ?? countBreaks(chunks);
  }

  /** The lines of the file after `removed` chunks from `from` on gave way to others. */
  edited(file: RigFile, chunks: readonly Chunk[], offsets: Int32Array, from: number, removed: number): FileLines {
    const added = chunks.length - this.#chunks.length + removed;
    const before = new Int32Array(chunks.length + 1);
    before.set(this.#before.subarray(0, from + 1));
    for (let i = from; i < from + added; i++) before[i + 1] = before[i]! + chunks[i]!.lineStarts.length;
    const delta = before[from + added]! - this.#before[from + removed]!;
    for (let i = from + removed + 1; i < this.#before.length; i++) before[i - removed + added] = this.#before[i]! + delta;
    return new FileLines(file, chunks, offsets, before);
  }

  /** The same lines of a file that is made of the same chunks: who holds them holds no other. */
  of(file: RigFile): FileLines {
    return new FileLines(file, this.#chunks, this.#offsets, this.#before);
  }

  get text(): string {
    return this.#file.text;
  }

  get lineCount(): number {
    return this.#before[this.#chunks.length]! + 1;
  }

  get #length(): number {
    return this.#offsets[this.#chunks.length]!;
  }

  lineColumn(offset: number): LineColumn {
    const at = Math.max(0, Math.min(offset, this.#length));
    // At the very end the last chunk is asked: behind its last line break stands the last line.
    if (this.#chunks.length === 0) return { line: 0, column: 0 };
    const index = this.#indexAt(at);
    const inside = at - this.#offsets[index]!;
    const starts = this.#chunks[index]!.lineStarts;
    const passed = countUpTo(starts, inside);
    return { line: this.#before[index]! + passed, column: inside - (passed === 0 ? 0 : starts[passed - 1]!) };
  }

  #indexAt(at: number): number {
    const end = this.#chunks.length - 1;
    for (let i = this.#last; i <= Math.min(end, this.#last + 1); i++) if (this.#offsets[i]! <= at && (at < this.#offsets[i + 1]! || i === end)) return (this.#last = i);
    return (this.#last = Math.min(end, countUpTo(this.#offsets, at) - 1));
  }

  offset(line: number, column: number): number {
    if (line < 0) return 0;
    if (line >= this.lineCount) return this.#length;
    const start = this.lineStart(line);
    return Math.max(start, Math.min(start + Math.max(0, column), this.lineEnd(line)));
  }

  lineStart(line: number): number {
    const wanted = Math.max(0, Math.min(line, this.lineCount - 1));
    if (wanted === 0) return 0;
    // The chunk in which line break number `wanted` stands.
    const index = countUpTo(this.#before, wanted - 1, this.#chunks.length) - 1;
    return this.#offsets[index]! + this.#chunks[index]!.lineStarts[wanted - this.#before[index]! - 1]!;
  }

  lineEnd(line: number): number {
    let end = line + 1 < this.lineCount ? this.lineStart(line + 1) : this.#length;
    const start = this.lineStart(line);
    let index = countUpTo(this.#offsets, end - 1) - 1;
    for (; end > start; end--) {
      if (end - 1 < this.#offsets[index]!) index--;
      const c = this.#chunks[index]!.text.charCodeAt(end - 1 - this.#offsets[index]!);
      if (c !== 10 && c !== 13) break;
    }
    return end;
  }
}

function countBreaks(chunks: readonly Chunk[]): Int32Array {
  const before = new Int32Array(chunks.length + 1);
  for (let i = 0; i < chunks.length; i++) before[i + 1] = before[i]! + chunks[i]!.lineStarts.length;
  return before;
}
