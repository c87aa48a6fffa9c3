import type { Project } from '../project.ts';
import { resolveUse } from '../use-path.ts';
import type { FileEdit } from './code-actions.ts';

/** The path of a file as another one writes it. */
export function pathFrom(from: string, to: string): string {
  const folder = from.split('/').slice(0, -1);
  const parts = to.split('/');
  let same = 0;
  while (same < folder.length && same < parts.length - 1 && folder[same] === parts[same]) same++;
  return [...folder.slice(same).map(() => '..'), ...parts.slice(same)].join('/');
}

/** The `use` paths to write anew when files, or folders with all in them, are moved. */
export function useEdits(project: Project, moves: readonly { readonly from: string; readonly to: string }[]): FileEdit[] {
  const moved = (path: string): string => {
    for (const { from, to } of moves) {
      if (path === from) return to;
      if (path.startsWith(`${from}/`)) return to + path.slice(from.length);
    }
    return path;
  };
  const edits: FileEdit[] = [];
  for (const path of [...project.paths].sort()) {
    const file = project.file(path)!;
    for (const use of file.uses) {
      const target = resolveUse(path, use.path);
      if (target === undefined || (moved(target) === target && moved(path) === path)) continue;
      const text = pathFrom(moved(path), moved(target));
      // What leads to the same file is left as it is written, and what cannot be written between quotes is not.
      if (resolveUse(moved(path), use.path) === moved(target) || text.includes('"') || resolveUse(moved(path), text) !== moved(target)) continue;
      const span = file.spanOf(use.place)!;
      edits.push({ path, start: span.start + 1, end: span.end - 1, text });
    }
  }
  return edits;
}
