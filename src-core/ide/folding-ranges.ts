import type { Project } from '../project.ts';

export interface FoldingRange {
  /** Zero-based lines. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'block' | 'comment' | 'logbook';
}

/** Blocks, runs of comments that stand alone, and logbooks of three entries or more. */
export function foldingRanges(project: Project, path: string): FoldingRange[] {
  const file = project.file(path);
  if (file === undefined) return [];
  const ranges: FoldingRange[] = [];
  const lineOf = (offset: number): number => file.lines.lineColumn(offset).line;
  const add = (from: number, to: number, kind: FoldingRange['kind']): void => {
    if (from < to) ranges.push({ from, to, kind });
  };
  for (const { chunk, offset } of file.chunks) {
    for (const statement of chunk.tree.statements) {
      const { block } = statement;
      if (block === undefined) continue;
      const last = lineOf(offset + block.end);
      // The closing brace stays in sight.
      add(lineOf(offset + block.open.start), block.close === undefined ? last : last - 1, 'block');
      const dated = block.statements.filter((s) => s.tokens[0]?.kind === 'date');
      if (dated.length >= 3) add(lineOf(offset + dated[0]!.start), lineOf(offset + dated.at(-1)!.end), 'logbook');
    }
    let first = -1;
    let last = -2;
    for (const comment of chunk.tree.comments) {
      const line = lineOf(offset + comment.start);
      const alone = file.text.slice(file.lines.lineStart(line), offset + comment.start).trim() === '';
      if (alone && line === last + 1) last = line;
      else {
        add(first, last, 'comment');
        [first, last] = alone ? [line, line] : [-1, -2];
      }
    }
    add(first, last, 'comment');
  }
  return ranges.sort((a, b) => a.from - b.from || b.to - a.to);
}
