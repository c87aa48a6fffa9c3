import { absenceSays, type OpenFolder } from '../../files/open-rigs.ts';
import type { JudgeRoots } from './judge-roots.ts';
import { printOrder } from './print-order.ts';
import type { Counts, Judging } from './root-judge.ts';
import { ToldOnce, type Told } from './tell.ts';

/** Where the results of one workspace folder go, as soon as they are known. */
export interface Takes {
  /** Findings of one file, in order. */
  file(told: readonly Told[]): void;
  counts(counts: Counts): void;
  problem(path: string, says: string): void;
  /** One more root is judged. */
  judged(): void;
}

interface Waiting {
  readonly path: string;
  left: number;
  readonly told: ToldOnce;
  counted: number;
  counts: Counts | undefined;
}

/**
 * Judges the roots of a folder one by one and tells of each file once every root that takes it in is judged. `folder` holds
 * the outline only: text and results of a root live no longer than its turn.
 */
export async function judgeFleet(folder: OpenFolder, judging: Judging, isJudged: (root: string) => boolean, judgeRoots: JudgeRoots, takes: Takes): Promise<void> {
  const steps: (Waiting | undefined)[] = [];
  const byPath = new Map<string, Waiting>();
  const pathsOf = new Map<string, Waiting[]>();
  for (const { path, roots } of printOrder(folder.project, isJudged)) {
    const step: Waiting = { path, left: roots.length, told: new ToldOnce(), counted: Infinity, counts: undefined };
    steps.push(step);
    byPath.set(path, step);
    for (const root of roots) entryOf(pathsOf, root).push(step);
  }
  // The sooner a file is told of, the sooner its roots are judged.
  const roots = [...pathsOf.keys()];
  const rankOf = new Map(folder.project.roots().map((root, rank) => [root, rank]));
  let next = 0;
  for await (const { root, files, absent } of judgeRoots(judging, roots)) {
    const rank = rankOf.get(root)!;
    for (const { path, told, counts } of files) {
      // A file that is used only since the outline was made is told of by the next check.
      const step = byPath.get(path);
      if (step === undefined) continue;
      step.told.add(rank, told);
      // A file that several roots take in is counted once, as the first of them judges it.
      if (step.counted <= rank) continue;
      step.counted = rank;
      step.counts = counts;
    }
    if (absent !== undefined) takes.problem(folder.called(root), absenceSays[absent]);
    takes.judged();
    for (const step of pathsOf.get(root)!) step.left--;
    pathsOf.delete(root);
    for (let step = steps[next]; step !== undefined && step.left === 0; step = steps[++next]) {
      takes.file(step.told.inOrder());
      if (step.counts !== undefined) takes.counts(step.counts);
      byPath.delete(step.path);
      steps[next] = undefined;
    }
  }
}

function entryOf<V>(map: Map<string, V[]>, key: string): V[] {
  let list = map.get(key);
  if (list === undefined) map.set(key, (list = []));
  return list;
}
