import type { Project } from '../project.ts';
import { mentionsIn } from './mentions.ts';
import { symbolKindOf, type SymbolKind } from './document-symbols.ts';
import type { FileSpan } from './viewing.ts';

export interface WorkspaceSymbol extends FileSpan {
  readonly name: string;
  readonly kind: SymbolKind;
  /** What it belongs to. */
  readonly container: string;
}

const mostSymbols = 500;

/** True when the letters of the query stand in the name in their order. */
export function matchesQuery(name: string, query: string): boolean {
  const lower = name.toLowerCase();
  let at = 0;
  for (const letter of query.toLowerCase()) {
    at = lower.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

/** Everything with a name, in all files. */
export function workspaceSymbols(project: Project, query: string): WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = [];
  for (const path of [...project.paths].sort()) {
    const file = project.file(path)!;
    for (const chunk of file.bound) {
      for (const mention of mentionsIn(chunk)) {
        if (!mention.declares || !matchesQuery(mention.name, query)) continue;
        const own = mention.statement === undefined;
        found.push({ path, ...file.spanOf(mention.place)!, name: mention.name, kind: own ? symbolKindOf(mention.block.definition.head) : 'part', container: own ? mention.block.definition.head : (mention.block.name ?? mention.block.definition.head) });
        if (found.length === mostSymbols) return found;
      }
    }
  }
  return found;
}
