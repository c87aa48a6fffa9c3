import type { RigFile } from '../../src-core/project.ts';
import type { Edit } from '../../src-core/syntax/chunk.ts';
import type { Range } from './positions.ts';

export interface TextChange {
  readonly range: Range;
  readonly text: string;
}

/** Fewer than these are made one by one sooner than the text is put together for them. */
const worthIt = 8;

/** A break that could come together with another one when what stands between them is taken away. */
const loneReturn = /\r(?!\n)/;

/**
 * Changes that each stay inside a line, counted in UTF-16 units, as edits that come to the same: one for each stretch that is read on its own, the last in the
 * text first, so that none moves another. Undefined where they have to be made one by one.
 */
export function foldChanges(file: RigFile, changes: readonly TextChange[]): Edit[] | undefined {
  if (changes.length < worthIt) return undefined;
  const { lines, text } = file;
  const { lineCount } = lines;
  const touched = new Map<number, string>();
  for (const { range: { start, end }, text: inserted } of changes) {
    if (start.line !== end.line || start.line >= lineCount || /[\r\n]/.test(inserted)) return undefined;
    const line = touched.get(start.line) ?? text.slice(lines.lineStart(start.line), lines.lineEnd(start.line));
    const [from, to] = start.character <= end.character ? [start.character, end.character] : [end.character, start.character];
    touched.set(start.line, line.slice(0, from) + inserted + line.slice(to));
  }
  if (loneReturn.test(text)) return undefined;
  const edits: { start: number; end: number; text: string; chunk: unknown }[] = [];
  for (const line of [...touched.keys()].sort((a, b) => a - b)) {
    const [start, end] = [lines.lineStart(line), lines.lineEnd(line)];
    const chunk = file.chunkAt(start)?.chunk;
    const last = edits.at(-1);
    if (last === undefined || last.chunk !== chunk) edits.push({ start, end, text: touched.get(line)!, chunk });
    else {
      last.text += text.slice(last.end, start) + touched.get(line)!;
      last.end = end;
    }
  }
  return edits.reverse();
}
