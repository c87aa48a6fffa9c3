import type { Project } from '../../../src-core/project.ts';

/** A file whose findings are printed, with the roots that have to be judged before. */
export interface Step {
  readonly path: string;
  readonly roots: readonly string[];
}

/** Others need not wait for a file that more rigs than this take in. */
export const widelyUsed = 100;

/**
 * The order in which findings are printed: by path, so that it hangs on nothing but the files. What more than a hundred
 * rigs take in comes last: where it stood by its path, nothing behind it could be printed before all of them are judged.
 */
export function printOrder(outline: Project, isJudged: (root: string) => boolean): Step[] {
  const steps = [...outline.paths]
    .sort()
    .map((path): Step => ({ path, roots: outline.rootsOf(path).filter(isJudged) }))
    .filter(({ roots }) => roots.length > 0);
  return [...steps.filter(({ roots }) => roots.length <= widelyUsed), ...steps.filter(({ roots }) => widelyUsed < roots.length)];
}
