import { parentPort } from 'node:worker_threads';
import { RootJudge, type JudgedRig, type Judging } from './root-judge.ts';

/** Roots for a worker to judge. All that goes from thread to thread is plain data. */
export interface Batch {
  readonly number: number;
  readonly judging: Judging;
  readonly roots: readonly string[];
}

export type FromWorker = 'ready' | { readonly number: number; readonly rigs: readonly JudgedRig[] };

/** Judges what it is sent, for as long as the thread that started it wants. */
export function runFleetWorker(): void {
  const judges = new Map<string, RootJudge>();
  const answer = (message: FromWorker): void => parentPort!.postMessage(message);
  parentPort!.on('message', ({ number, judging, roots }: Batch) => {
    let judge = judges.get(judging.folder);
    if (judge === undefined) judges.set(judging.folder, (judge = new RootJudge(judging)));
    answer({ number, rigs: roots.map((root) => judge.judge(root)) });
  });
  answer('ready');
}
