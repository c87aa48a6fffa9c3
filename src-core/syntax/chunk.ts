import { late } from '../base/late.ts';
import { lineStartsIn } from '../base/line-index.ts';
import { closingQuote, lineEndFrom, openStringEnd } from './lexer.ts';
import { parseChunk } from './parser.ts';
import type { ChunkTree } from './tree.ts';

/** Chunks whose trees are held: what a hand works on, not all that is open. */
const recent: Chunk[] = [];
const mostRecent = 64;

/**
 * A stretch of a file that is read on its own: one top-level statement with its block and the comments above it.
 * Its identity is what everything derived from it is cached by; where it stands in its file is known to the file only.
 */
export class Chunk {
  readonly text: string;
  #tree: ChunkTree | undefined;
  #lineStarts: readonly number[] | undefined;

  constructor(text: string) {
    this.text = text;
  }

  /** Held for as long as it is among the last that were asked for; read again when it is not. */
  get tree(): ChunkTree {
    if (this.#tree === undefined) {
      this.#tree = parseChunk(this.text);
      recent.push(this);
      if (recent.length > mostRecent) for (const chunk of recent.splice(0, mostRecent / 2)) chunk.#tree = undefined;
    }
    return this.#tree;
  }

  /** Where lines begin inside it, behind its line breaks: what an edit elsewhere leaves as it is. */
  get lineStarts(): readonly number[] {
    this.#lineStarts ??= lineStartsIn(this.text);
    return this.#lineStarts;
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
/** Begins a new page: nothing that is open on the page before goes on there. */
const FF = 12;

/**
 * Offset behind the chunk that starts at `start`: behind the line on which its braces are balanced again.
 * A line in column 0 that opens one of the `topHeads` blocks while a brace is open starts a new chunk: a forgotten brace
 * costs its own block and not the rest of the file. So does a line that begins with a form feed, which is how the fences of
 * a document are kept apart. The head of a block takes in a brace that opens it further down.
 */
export function chunkEnd(text: string, start: number, topHeads: ReadonlySet<string>): number {
  let depth = 0;
  let content = false;
  let braces = false;
  let first = start;
  let at = start;
  while (at < text.length) {
    const lineStart = at;
    if (depth > 0 && lineStart > start && (text.charCodeAt(lineStart) === FF || startsTopBlock(text, lineStart, topHeads))) return lineStart;
    let c = text.charCodeAt(at);
    while (c === 32 || c === 9) c = text.charCodeAt(++at);
    if (at < text.length && c !== LF && c !== CR && c !== 35) {
      if (!content) first = at;
      content = true;
    }
    while (at < text.length) {
      telling.lastIndex = at;
      at = telling.test(text) ? telling.lastIndex - 1 : text.length;
      c = text.charCodeAt(at);
      if (c === 34) at = closingQuote(text, at) ?? openStringEnd(text, at);
      else if (c === 123 || c === 125) {
        braces = true;
        depth += c === 123 ? 1 : -1;
        at++;
      } else {
        if (c === 35) at = lineEndFrom(text, at);
        break;
      }
    }
    if (at < text.length) at += text.charCodeAt(at) === CR && text.charCodeAt(at + 1) === LF ? 2 : 1;
    if (content && depth <= 0 && !(!braces && isBlockHead(text, first, topHeads) && opensAt(text, at))) return at;
  }
  return text.length;
}

/** What tells where a line, a text or a block ends. */
const telling = /[\r\n#"{}]/g;
const headWord = /[a-z][a-z-]*/y;
const plainLetter = /[A-Z0-9_]/;
const anyLetter = late(() => /^[\p{L}\p{M}\p{N}]/u);

function isBlockHead(text: string, at: number, topHeads: ReadonlySet<string>): boolean {
  headWord.lastIndex = at;
  const word = headWord.exec(text)?.[0];
  if (word === undefined || word === 'use' || !topHeads.has(word)) return false;
  // A word that goes on is another one.
  const next = text.codePointAt(at + word.length);
  return next === undefined || !(next < 128 ? plainLetter : anyLetter()).test(String.fromCodePoint(next));
}

/** Whether the next thing that is said from `at` on is a brace that opens a block. */
function opensAt(text: string, at: number): boolean {
  for (let i = at; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 35) while (i + 1 < text.length && text.charCodeAt(i + 1) !== LF && text.charCodeAt(i + 1) !== CR) i++;
    else if (c !== 32 && c !== 9 && c !== LF && c !== CR) return c === 123;
  }
  return false;
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

/** What an edit does to the chunks of a file: `removed` of them, from `from` on, give way to `added`. */
export interface Resplit {
  readonly from: number;
  readonly removed: number;
  readonly added: readonly Chunk[];
}

/**
 * Cuts anew what an edit reaches, and reads nothing else of the file. `offsets` says where each of the chunks begins,
 * and last where the file ends. Chunks whose text stays keep their identity; the cut is the one that `splitChunks` of the new
 * text gives.
 */
export function resplitChunks(chunks: readonly Chunk[], offsets: ArrayLike<number>, edit: Edit, topHeads: ReadonlySet<string>): Resplit {
  const delta = edit.text.length - (edit.end - edit.start);
  // The chunk before may end because of what the edit touches (a line that began a block): it is read again too.
  const from = Math.max(0, firstEndingAt(chunks, offsets, edit.start) - 1);
  const base = offsets[from] ?? 0;
  // A line break cut in two may come together behind the edit: the cut is known again only past that.
  const settled = edit.start + edit.text.length + 2;
  let next = from;
  let region = '';
  let edited = false;
  const extend = (atLeast: number): void => {
    let more = '';
    for (let taken = 0; next < chunks.length && (taken < atLeast || offsets[next]! <= edit.end + 2); next++, taken++) more += chunks[next]!.text;
    region += more;
    if (edited) return;
    region = region.slice(0, edit.start - base) + edit.text + region.slice(edit.end - base);
    edited = true;
  };
  extend(2);
  const pieces: { at: number; text: string }[] = [];
  let at = base;
  let old = from;
  let grow = 4;
  for (;;) {
    while (old < chunks.length && (offsets[old]! < edit.end || offsets[old]! + delta < at)) old++;
    if (at >= settled && old < chunks.length && offsets[old]! + delta === at) break;
    if (at - base >= region.length && next >= chunks.length) {
      old = chunks.length;
      break;
    }
    const end = base + chunkEnd(region, at - base, topHeads);
    if (end - base >= region.length && next < chunks.length) {
      // Whether the chunk ends here is told by what follows; doubling keeps the reading in proportion.
      extend(grow);
      grow *= 2;
      continue;
    }
    pieces.push({ at, text: region.slice(at - base, end - base) });
    at = end;
  }
  return { from, removed: old - from, added: keepSame(chunks, from, old, pieces, offsets, edit, delta) };
}

/** Index of the first chunk that ends at or behind an offset. */
function firstEndingAt(chunks: readonly Chunk[], offsets: ArrayLike<number>, offset: number): number {
  let low = 0;
  let high = chunks.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (offsets[mid + 1]! < offset) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** New chunks for the pieces, but for those that were cut the same way before. */
function keepSame(chunks: readonly Chunk[], from: number, to: number, pieces: readonly { at: number; text: string }[], offsets: ArrayLike<number>, edit: Edit, delta: number): Chunk[] {
  let old = from;
  return pieces.map(({ at, text }) => {
    const moved = at < edit.start ? 0 : delta;
    while (old < to && offsets[old]! + moved < at) old++;
    return old < to && offsets[old]! + moved === at && chunks[old]!.text === text ? chunks[old++]! : new Chunk(text);
  });
}
