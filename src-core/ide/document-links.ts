import type { Span } from '../base/span.ts';
import type { Project } from '../project.ts';
import { resolveUse } from '../use-path.ts';

export interface DocumentLink extends Span {
  /** The used file, from the workspace folder. */
  readonly target: string;
}

/** The path of every `use`, without its quotes. */
export function documentLinks(project: Project, path: string): DocumentLink[] {
  const file = project.file(path);
  const links: DocumentLink[] = [];
  for (const chunk of file?.bound ?? []) {
    for (const use of chunk.uses) {
      const target = resolveUse(path, use.path);
      const span = file!.spanOf(use.place)!;
      if (target !== undefined) links.push({ start: span.start + 1, end: span.end - 1, target });
    }
  }
  return links;
}
