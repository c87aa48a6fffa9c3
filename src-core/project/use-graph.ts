import type { Place } from '../base/span.ts';
import type { BoundUse, Problem } from '../model/bound.ts';
import { resolveUse } from '../use-path.ts';
import type { RigFile } from './rig-file.ts';

/** Why a used file is not there. */
export type Absence = 'missing' | 'unreadable' | 'not-text' | 'too-large' | 'a-folder' | 'outside';

export interface Use {
  /** From the workspace folder; undefined when the path leads out of it. */
  readonly path: string | undefined;
  readonly place: Place;
  readonly written: string;
}

const usesOf = new WeakMap<readonly BoundUse[], readonly Use[]>();

/** The `use`s of a file, resolved. The same list while no edit touches one. */
export function usesIn(file: RigFile): readonly Use[] {
  let uses = usesOf.get(file.uses);
  if (uses === undefined) {
    uses = file.uses.map((use) => ({ path: resolveUse(file.path, use.path), place: use.place, written: use.path }));
    usesOf.set(file.uses, uses);
  }
  return uses;
}

export interface Closure {
  /** Used files first, the root last; each once. */
  readonly order: readonly string[];
  readonly problems: readonly Problem[];
}

/** Everything a root takes in. Loops and diamonds are walked once; what is wrong stands at its `use`. */
export function closureOf(root: string, files: ReadonlyMap<string, RigFile>, absent: ReadonlyMap<string, Absence>): Closure {
  const order: string[] = [];
  const problems: Problem[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const stack: { file: RigFile; next: number }[] = [];
  const open = (file: RigFile): void => {
    state.set(file.path, 'open');
    stack.push({ file, next: 0 });
  };
  const start = files.get(root);
  if (start !== undefined) open(start);
  while (stack.length > 0) {
    const top = stack.at(-1)!;
    const use = usesIn(top.file)[top.next++];
    if (use === undefined) {
      stack.pop();
      state.set(top.file.path, 'done');
      order.push(top.file.path);
      continue;
    }
    const { path, place, written } = use;
    if (path === undefined) {
      problems.push(unresolvedProblem(top.file.path, written, place));
      continue;
    }
    const file = files.get(path);
    if (file === undefined) problems.push(absenceProblem(absent.get(path), written, place));
    else if (state.get(path) === 'open') problems.push({ code: 'use-loop', place, ...(path === top.file.path ? { message: 'this file uses itself', help: 'remove this line' } : { message: `\`${written}\` uses this file in turn`, help: 'move what both need into a third file' }) });
    else if (!state.has(path)) open(file);
  }
  return { order, problems };
}

function unresolvedProblem(from: string, written: string, place: Place): Problem {
  const slashed = written.replace(/\\+/g, '/');
  if (slashed !== written && resolveUse(from, slashed) !== undefined) {
    const fixes = [{ title: `Write \`${slashed}\``, edits: [{ place, text: `"${slashed}"` }] }];
    return { code: 'use-outside', place, message: `\`${written}\` is not written with \`/\` between folders`, help: `write \`${slashed}\``, fixes };
  }
  if (/^(?:\/|[A-Za-z]:)/.test(slashed)) return { code: 'use-outside', place, message: `\`${written}\` does not start at this file's folder`, help: 'write the path from this file\'s folder, with `/`, such as `../practice.rig`' };
  return { code: 'use-outside', place, message: `\`${written}\` leads out of the workspace folder`, help: 'keep shared files inside the folder, and write the path from this file\'s folder with `/`' };
}

function absenceProblem(why: Absence | undefined, written: string, place: Place): Problem {
  const says: Record<Absence, string> = {
    missing: `\`${written}\` is not there`,
    unreadable: `\`${written}\` cannot be read`,
    'not-text': `\`${written}\` is not text in UTF-8`,
    'too-large': `\`${written}\` is too large to be read`,
    'a-folder': `\`${written}\` is a folder`,
    outside: `\`${written}\` leads out of the workspace folder`,
  };
  return { code: why === 'outside' ? 'use-outside' : 'use-missing', place, message: says[why ?? 'missing'], help: why === 'outside' ? 'keep shared files inside the folder' : 'correct the path, which starts at this file\'s folder' };
}

/** Files that no other file uses, and one of each loop of files that use each other; in order of their paths. */
export function rootsAmong(files: ReadonlyMap<string, RigFile>): { readonly roots: readonly string[]; readonly reachedFrom: ReadonlyMap<string, readonly string[]> } {
  const used = new Set<string>();
  for (const file of files.values()) for (const u of usesIn(file)) if (u.path !== undefined && u.path !== file.path) used.add(u.path);
  const paths = [...files.keys()].sort();
  const roots = paths.filter((p) => !used.has(p));
  const reachedFrom = new Map<string, string[]>();
  const reach = (root: string): void => {
    for (const p of usesIn(files.get(root)!).length === 0 ? [root] : closureOf(root, files, new Map()).order) {
      const list = reachedFrom.get(p);
      if (list === undefined) reachedFrom.set(p, [root]);
      else list.push(root);
    }
  };
  roots.forEach(reach);
  for (const path of paths) {
    if (reachedFrom.has(path)) continue;
    roots.push(path);
    reach(path);
  }
  return { roots, reachedFrom };
}
