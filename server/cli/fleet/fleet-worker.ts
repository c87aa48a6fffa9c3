import { parentPort } from 'node:worker_threads';
import { RootJudge, type JudgedRig, type Judging } from './root-judge.ts';

/** Roots for a worker to judge, and its answer. Both go from thread to thread as plain data. */
export interface Batch {
  readonly number: number;
  readonly judging: Judging;
  readonly roots: readonly string[];
}
export interface JudgedBatch {
  readonly number: number;
  readonly rigs: readonly JudgedRig[];
}

/** Judges what it is sent, for as long as the thread that started it wants. */
export function runFleetWorker(): void {
  const judges = new Map<string, RootJudge>();
  parentPort!.on('message', ({ number, judging, roots }: Batch) => {
    let judge = judges.get(judging.folder);
    if (judge === undefined) judges.set(judging.folder, (judge = new RootJudge(judging)));
    const answer: JudgedBatch = { number, rigs: roots.map((root) => judge.judge(root)) };
    parentPort!.postMessage(answer);
  });
}
