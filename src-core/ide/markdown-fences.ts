import { lineStartsIn } from '../base/line-index.ts';
import type { Span } from '../base/span.ts';

/** Documents whose fences are read as rigs. */
export const isMarkdownPath = (path: string): boolean => /\.(?:md|markdown)$/i.test(path);

/** A quick look: whether a text can hold a rig at all. */
export const mayHoldRig = (markdown: string): boolean => /(?:`{3}|~{3})[ \t]*rig\b/.test(markdown);

/** A `rig` fence of a Markdown document. */
export interface RigFence {
  /** The lines between the fences, the last line break included. */
  readonly content: Span;
  /** Where the line of the opening fence begins. */
  readonly opening: number;
  /** Zero-based line of the opening fence. */
  readonly line: number;
  /** What each of its lines begins with before the rig's own text: the marks of a block quote, the indent of a list. */
  readonly prefix: string;
}

interface Open {
  readonly mark: string;
  readonly quotes: number;
  readonly isRig: boolean;
  readonly line: number;
  readonly opening: number;
  readonly start: number;
  readonly prefix: string;
}

const fenceLine = /^([ \t]*)(`{3,}(?!.*`)|~{3,})[ \t]*([^\s{]*)/;
const listMark = /^([ \t]*(?:[-*+]|\d{1,9}[.)])[ \t]+)/;

/** How much of a line its block quotes take, up to `most` of them. */
function quotePrefix(line: string, most: number): { readonly length: number; readonly count: number } {
  let length = 0;
  let count = 0;
  for (let match = /^ {0,3}>[ ]?/.exec(line); match !== null && count < most; match = /^ {0,3}>[ ]?/.exec(line.slice(length))) {
    length += match[0].length;
    count++;
  }
  return { length, count };
}

/** The fences of a document that hold a rig, in order. A fence that is never closed ends with the document. */
export function rigFences(markdown: string): RigFence[] {
  const starts = [0, ...lineStartsIn(markdown)];
  const fences: RigFence[] = [];
  let open: Open | undefined;
  /** What a list item around the line indents by. */
  let listIndent = 0;
  const close = (end: number): void => {
    if (open?.isRig === true) fences.push({ content: { start: open.start, end }, opening: open.opening, line: open.line, prefix: open.prefix });
    open = undefined;
  };
  for (const [i, start] of starts.entries()) {
    const next = starts[i + 1] ?? markdown.length;
    const raw = markdown.slice(start, next).replace(/[\r\n]+$/, '');
    const quotes = quotePrefix(raw, open?.quotes ?? Infinity);
    // A quotation that ends takes the fence in it along.
    if (open !== undefined && quotes.count < open.quotes) close(start);
    let line = raw.slice(quotes.length);
    if (open === undefined) {
      const indent = /^[ \t]*/.exec(line)![0].length;
      if (line.trim() !== '' && indent < listIndent) listIndent = 0;
      const item = listMark.exec(line);
      if (item !== null) {
        listIndent = item[0].length;
        line = ' '.repeat(listIndent) + line.slice(listIndent);
      }
    }
    const fence = fenceLine.exec(line);
    if (open !== undefined) {
      const closes = fence !== null && fence[2]![0] === open.mark[0] && open.mark.length <= fence[2]!.length && line.trim() === fence[2];
      if (closes) close(start);
    } else if (fence !== null && fence[1]!.length - listIndent < 4) {
      open = { mark: fence[2]!, quotes: quotes.count, isRig: fence[3]!.toLowerCase() === 'rig', line: i, opening: start, start: next, prefix: raw.slice(0, quotes.length) + fence[1]! };
    }
  }
  close(markdown.length);
  return fences;
}

const blanked = (text: string): string => text.replace(/[^\r\n]/g, ' ');

/**
 * The rig that the fences of a document make up together: as long as the document, every letter where it stands in it, and
 * blank outside the fences, each of which begins on a page of its own. Whatever is found in it is found at its real place.
 */
export function rigTextOf(markdown: string, fences: readonly RigFence[] = rigFences(markdown)): string {
  const parts: string[] = [];
  let at = 0;
  for (const { content, opening } of fences) {
    parts.push(blanked(markdown.slice(at, opening)), '\f', blanked(markdown.slice(opening + 1, content.start)));
    // What a block quote writes before each line is no part of the rig.
    parts.push(markdown.slice(content.start, content.end).replace(/^(?: {0,3}>[ ]?)+/gm, blanked));
    at = content.end;
  }
  parts.push(blanked(markdown.slice(at)));
  return parts.join('');
}

/**
 * Text for a fence that is written with what the fence's lines begin with, so that it stays inside. The text counts its
 * indents from the left edge of the document, where the rig has those beginnings blank.
 */
export function textInFence(text: string, { prefix }: RigFence, atLineStart: boolean): string {
  if (prefix === '') return text;
  const parts = text.split(/(\r\n|\n|\r)/);
  return parts.map((line, i) => {
    // A text that ends with a line break leads on to a line that has its beginning.
    if (i % 2 === 1 || (i === 0 && !atLineStart) || (i === parts.length - 1 && line === '')) return line;
    return line.trim() === '' ? prefix.trimEnd() : prefix + line.slice(Math.min(prefix.length, /^[ \t]*/.exec(line)![0].length));
  }).join('');
}

/** The fence that an offset lies in. */
export const fenceAt = (fences: readonly RigFence[], offset: number): RigFence | undefined => fences.find(({ content }) => content.start <= offset && offset <= content.end);
