import type { Span } from '../base/span.ts';
import { differenceOf, type Project, type RigFile } from '../project.ts';
import { formatChunk, formatFile, withoutBlankStart } from '../syntax/format.ts';
import type { Chunk, Edit } from '../syntax/chunk.ts';
import { topHeads } from '../vocabulary/vocabulary.ts';

/**
 * The edits that bring a file into the one layout, line by line, so that a cursor elsewhere stays where it is. Only chunks
 * that touch the stretch are laid out, and each of them once.
 */
export function formattingEdits(project: Project, path: string, within: Span = { start: 0, end: Infinity }): Edit[] {
  const file = project.file(path);
  if (file === undefined) return [];
  const touches = (span: Span): boolean => within.start <= span.end && span.start <= within.end;
  const apart = chunkEdits(file, touches);
  return (apart ?? lineEdits(file.text, formatFile(file.text, topHeads))).filter(touches);
}

/** Chunk by chunk, which is how they are laid out; undefined where line ends of several kinds or a blank file ask for the whole. */
function chunkEdits({ chunks }: RigFile, touches: (span: Span) => boolean): Edit[] | undefined {
  if (chunks.some(({ chunk }) => chunk.text.includes('\r')) || !chunks.some(({ chunk }) => /\S/.test(chunk.text))) return undefined;
  const edits: Edit[] = [];
  chunks.forEach(({ chunk, offset }, i) => {
    if (!touches({ start: offset, end: offset + chunk.text.length })) return;
    for (const edit of i === 0 ? lineEdits(chunk.text, withoutBlankStart(formatChunk(chunk))) : editsOf(chunk)) edits.push({ start: offset + edit.start, end: offset + edit.end, text: edit.text });
  });
  return edits;
}

const kept = new WeakMap<Chunk, readonly Edit[]>();

/** The edits that lay a chunk out, with places counted from its start. They are worked out once. */
function editsOf(chunk: Chunk): readonly Edit[] {
  let edits = kept.get(chunk);
  if (edits === undefined) kept.set(chunk, (edits = lineEdits(chunk.text, formatChunk(chunk))));
  return edits;
}

/** What typing brings into the layout: a line when it is left, a block when it is closed. Nothing where the cursor stands is touched. */
export function typedEdits(project: Project, path: string, offset: number, typed: string): Edit[] {
  const file = project.file(path);
  if (file === undefined) return [];
  if (typed === '}') {
    const closed = blockClosedAt(file, offset);
    return closed === undefined ? [] : formattingEdits(project, path, closed).filter((e) => closed.start <= e.start && e.end <= closed.end);
  }
  const { lines } = file;
  const { line } = lines.lineColumn(offset);
  if (line === 0) return [];
  const [start, end] = [lines.lineStart(line), lines.lineEnd(line)];
  // The new line is still empty, and an empty line may be taken away: something stands on it meanwhile.
  const held = isBlank(file, start, end) ? file.edited({ start, end, text: '#' }) : file;
  const left = { start: lines.lineStart(line - 1), end: lines.lineEnd(line - 1) };
  const touches = (span: Span): boolean => left.start <= span.end && span.start <= left.end;
  return (chunkEdits(held, touches) ?? lineEdits(held.text, formatFile(held.text, topHeads))).filter((e) => left.start <= e.start && e.end <= left.end);
}

function isBlank(file: RigFile, start: number, end: number): boolean {
  const found = file.chunkAt(start);
  return found === undefined || found.chunk.text.slice(found.at, found.at + end - start).trim() === '';
}

function blockClosedAt(file: RigFile, offset: number): Span | undefined {
  const found = file.chunkAt(Math.max(0, offset - 1));
  const closed = found?.chunk.tree.statements.find(({ block }) => block?.close?.end === found.at + 1);
  return found === undefined || closed === undefined ? undefined : { start: offset - 1 - found.at + closed.start, end: offset };
}

const linesOf = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+$/g) ?? [];

/** Changed lines one by one where both texts have the same number of lines; else one edit from the first difference to the last. */
function lineEdits(before: string, after: string): Edit[] {
  if (before === after) return [];
  const [a, b] = [linesOf(before), linesOf(after)];
  if (a.length !== b.length) return [differenceOf(before, after)];
  const edits: Edit[] = [];
  let at = 0;
  a.forEach((line, i) => {
    if (line !== b[i]) {
      const change = differenceOf(line, b[i]!);
      edits.push({ start: at + change.start, end: at + change.end, text: change.text });
    }
    at += line.length;
  });
  return edits;
}
