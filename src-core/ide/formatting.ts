import type { Span } from '../base/span.ts';
import { differenceOf, type Project, type RigFile } from '../project.ts';
import { formatFile } from '../syntax/format.ts';
import type { Edit } from '../syntax/chunk.ts';
import { topHeads } from '../vocabulary/vocabulary.ts';

/** The edits that bring a file into the one layout, line by line, so that a cursor elsewhere stays where it is. */
export function formattingEdits(project: Project, path: string, within: { readonly start: number; readonly end: number } = { start: 0, end: Infinity }): Edit[] {
  const file = project.file(path);
  if (file === undefined) return [];
  const formatted = formatFile(file.text, topHeads);
  if (formatted === file.text) return [];
  return lineEdits(file.text, formatted).filter((e) => within.start <= e.end && e.start <= within.end);
}

/** What typing brings into the layout: a line when it is left, a block when it is closed. Nothing where the cursor stands is touched. */
export function typedEdits(project: Project, path: string, offset: number, typed: string): Edit[] {
  const file = project.file(path);
  if (file === undefined) return [];
  if (typed === '}') {
    const closed = blockClosedAt(file, offset);
    return closed === undefined ? [] : formattingEdits(project, path, closed).filter((e) => closed.start <= e.start && e.end <= closed.end);
  }
  const { lines, text } = file;
  const { line } = lines.lineColumn(offset);
  if (line === 0) return [];
  const [start, end] = [lines.lineStart(line), lines.lineEnd(line)];
  // The new line is still empty, and an empty line may be taken away: something stands on it meanwhile.
  const held = text.slice(start, end).trim() === '' ? `${text.slice(0, start)}#${text.slice(end)}` : text;
  const left = { start: lines.lineStart(line - 1), end: lines.lineEnd(line - 1) };
  return lineEdits(held, formatFile(held, topHeads)).filter((e) => left.start <= e.start && e.end <= left.end);
}

function blockClosedAt(file: RigFile, offset: number): Span | undefined {
  const found = file.chunkAt(Math.max(0, offset - 1));
  const closed = found?.chunk.tree.statements.find(({ block }) => block?.close?.end === found.at + 1);
  return found === undefined || closed === undefined ? undefined : { start: offset - 1 - found.at + closed.start, end: offset };
}

const linesOf = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+$/g) ?? [];

/** Changed lines one by one where both texts have the same number of lines; else one edit from the first difference to the last. */
function lineEdits(before: string, after: string): Edit[] {
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
