import { differenceOf } from '../project.ts';
import type { Project } from '../project.ts';
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
