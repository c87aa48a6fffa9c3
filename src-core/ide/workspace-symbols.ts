import type { Place } from '../base/span.ts';
import { bindAside } from '../model/bind-chunk.ts';
import type { Project } from '../project.ts';
import type { Chunk } from '../syntax/chunk.ts';
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

interface Named {
  readonly name: string;
  readonly place: Place;
  readonly kind: SymbolKind;
  readonly container: string;
}

const namedIn = new WeakMap<Chunk, readonly Named[]>();

/** What a chunk declares. Kept by itself, since a search goes through all files, most of which nobody looks into. */
function namesOf(chunk: Chunk): readonly Named[] {
  let names = namedIn.get(chunk);
  if (names === undefined) {
    names = mentionsIn(bindAside(chunk)).flatMap(({ name, place, declares, block, statement }) => {
      const { head } = block.definition;
      const own = statement === undefined;
      return declares ? [{ name, place, kind: own ? symbolKindOf(head) : ('part' as const), container: own ? head : (block.name ?? head) }] : [];
    });
    namedIn.set(chunk, names);
  }
  return names;
}

/** Everything with a name, in all files. */
export function workspaceSymbols(project: Project, query: string): WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = [];
  for (const path of [...project.paths].sort()) {
    const file = project.file(path)!;
    for (const chunk of file.content) {
      for (const { name, place, kind, container } of namesOf(chunk)) {
        if (!matchesQuery(name, query)) continue;
        found.push({ path, ...file.spanOf(place)!, name, kind, container });
        if (found.length === mostSymbols) return found;
      }
    }
  }
  return found;
}
