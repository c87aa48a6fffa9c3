import { parseChunk } from './parser.ts';
import type { ChunkTree } from './tree.ts';

/**
 * A stretch of a file that is read on its own: one top-level statement with its block and the comments above it.
 * Its identity is what everything derived from it is cached by; where it stands in its file is known to the file only.
 */
export class Chunk {
  readonly text: string;
  #tree: ChunkTree | undefined;

  constructor(text: string) {
    this.text = text;
  }

  get tree(): ChunkTree {
    this.#tree ??= parseChunk(this.text);
    return this.#tree;
  }
}

export interface PlacedChunk {
  readonly chunk: Chunk;
  readonly offset: number;
}

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const LF = 10;
const CR = 13;

/**
 * Offset behind the chunk that starts at `start`: behind the line on which its braces are balanced again.
 * A line in column 0 that opens one of the `topHeads` blocks while a brace is open starts a new chunk: a forgotten brace
 * costs its own block and not the rest of the file.
 */
export function chunkEnd(text: string, start: number, topHeads: ReadonlySet<string>): number {
  let depth = 0;
  let content = false;
  let at = start;
  while (at < text.length) {
    const lineStart = at;
    if (depth > 0 && lineStart > start && startsTopBlock(text, lineStart, topHeads)) return lineStart;
    let quoted = false;
    for (; at < text.length; at++) {
      const c = text.charCodeAt(at);
      if (c === LF || c === CR) break;
      if (quoted) {
        if (c === 34) quoted = false;
        continue;
      }
      if (c === 32 || c === 9) continue;
      if (c === 35) {
        while (at < text.length && text.charCodeAt(at) !== LF && text.charCodeAt(at) !== CR) at++;
        break;
      }
      content = true;
      if (c === 34) quoted = true;
      else if (c === 123) depth++;
      else if (c === 125) depth--;
    }
    if (at < text.length) at += text.charCodeAt(at) === CR && text.charCodeAt(at + 1) === LF ? 2 : 1;
    if (content && depth <= 0) return at;
  }
  return text.length;
}

function startsTopBlock(text: string, at: number, topHeads: ReadonlySet<string>): boolean {
  const first = text.charCodeAt(at);
  if (first < 97 || first > 122) return false;
  let end = at;
  while (end < text.length && end - at < 24) {
    const c = text.charCodeAt(end);
    if ((c >= 97 && c <= 122) || c === 45) end++;
    else break;
  }
  if (!topHeads.has(text.slice(at, end))) return false;
  // A statement inside a block may begin with the same word: only a line that opens a block, or takes in a file, counts.
  for (let i = end; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === LF || c === CR || c === 35) return false;
    if (c === 123) return true;
    if (c === 34 && text.slice(at, end) === 'use') return true;
  }
  return false;
}

export function splitChunks(text: string, topHeads: ReadonlySet<string>): PlacedChunk[] {
  const chunks: PlacedChunk[] = [];
  for (let at = 0; at < text.length; ) {
    const end = chunkEnd(text, at, topHeads);
    chunks.push({ chunk: new Chunk(text.slice(at, end)), offset: at });
    at = end;
  }
  return chunks;
}

/**
 * The chunks of `text`, which came from the text of `before` by replacing `edit`. Chunks that the edit does not reach
 * keep their identity. Gives the same cut as `splitChunks(text)`.
 */
export function resplitChunks(before: readonly PlacedChunk[], edit: Edit, text: string, topHeads: ReadonlySet<string>): PlacedChunk[] {
  const delta = edit.text.length - (edit.end - edit.start);
  let low = 0;
  let high = before.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (before[mid]!.offset + before[mid]!.chunk.text.length < edit.start) low = mid + 1;
    else high = mid;
  }
  // The chunk before may end because of what the edit touches (a line that began a block): read it again too.
  const firstTouched = Math.max(0, low - 1);
  const result = before.slice(0, firstTouched);
  let at = before[firstTouched]?.offset ?? 0;
  if (before.length === 0) at = 0;
  let old = firstTouched;
  const editEnd = edit.start + edit.text.length;
  while (at < text.length) {
    while (old < before.length && before[old]!.offset + delta < at) old++;
    const candidate = before[old];
    if (at >= editEnd + 2 && candidate !== undefined && candidate.offset + delta === at) {
      if (delta === 0) for (let i = old; i < before.length; i++) result.push(before[i]!);
      else for (let i = old; i < before.length; i++) result.push({ chunk: before[i]!.chunk, offset: before[i]!.offset + delta });
      return result;
    }
    const end = chunkEnd(text, at, topHeads);
    const piece = text.slice(at, end);
    const same = before[old];
    result.push(same !== undefined && same.offset + delta === at && same.chunk.text === piece ? { chunk: same.chunk, offset: at } : { chunk: new Chunk(piece), offset: at });
    at = end;
  }
  return result;
}
