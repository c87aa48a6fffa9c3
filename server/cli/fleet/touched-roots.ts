import { realpathSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { usesIn } from '../../../src-core/project/use-graph.ts';
import { changesSince, neededRepository } from '../../files/git-revision.ts';
import { isInside } from '../../files/load-project.ts';
import type { OpenFolder } from '../../files/open-rigs.ts';
import { Refusal } from '../io.ts';

/** The roots of a folder that a change since a revision touches: themselves, or in a file that they take in. */
export function touchedRoots({ root, project }: OpenFolder, revision: string): ReadonlySet<string> {
  const top = neededRepository(root, root);
  const changes = changesSince(top, revision);
  if (changes === undefined) throw new Refusal(`\`${revision}\` is not a revision`, 'a revision is a commit, a branch or a tag, such as HEAD~1');
  const fromTop = (full: string): string | undefined => (isInside(top, full) ? relative(top, full).split(sep).join('/') : undefined);
  const differs = (path: string): boolean => {
    const known = fromTop(join(root, ...path.split('/')));
    return known !== undefined && changes.differs(known);
  };
  /** A link changes with itself and with what it leads to. What is under no version control may have changed. */
  const isChanged = (path: string): boolean => {
    const full = join(root, ...path.split('/'));
    const names = [full, realpathOf(full)].map(fromTop);
    return names.some((name) => name === undefined || changes.differs(name) || !changes.isTracked(name));
  };
  const touched = new Set<string>();
  for (const path of project.paths) {
    const uses = usesIn(project.file(path)!);
    const isTouched = isChanged(path) || uses.some((use) => use.path !== undefined && project.file(use.path) === undefined && differs(use.path));
    if (isTouched) for (const taking of project.rootsOf(path)) touched.add(taking);
  }
  return touched;
}

/** The path itself when the file has gone meanwhile. */
function realpathOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
