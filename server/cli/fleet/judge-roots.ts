import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Batch, JudgedBatch } from './fleet-worker.ts';
import { RootJudge, type JudgedRig, type Judging } from './root-judge.ts';

/** Judges roots and hands them on in the order in which they were given. */
export type JudgeRoots = (judging: Judging, roots: readonly string[]) => AsyncIterable<JudgedRig>;

/** How long we work before the program may look at signals and at a closed pipe. */
const slice_ms = 20;

/** In this thread. */
export async function* judgeHere(judging: Judging, roots: readonly string[]): AsyncGenerator<JudgedRig> {
  const judge = new RootJudge(judging);
  let started = performance.now();
  for (const root of roots) {
    yield judge.judge(root);
    if (performance.now() - started < slice_ms) continue;
    await setImmediate();
    started = performance.now();
  }
}

/** Roots that are sent to a worker at once, and batches that may be under way before the oldest of them is printed. */
const batchSize = 16;
const ahead = 4;

/** Threads of their own that judge. They load while this one still looks for files, and end with `stop`. */
export class FleetWorkers {
  readonly #workers: readonly Worker[];
  #failed: ((error: Error) => void) | undefined;
  #failure: Error | undefined;

  constructor(program: string, count: number) {
    this.#workers = Array.from({ length: count }, () => {
      const worker = new Worker(program, { argv: [], resourceLimits: { maxYoungGenerationSizeMb: 48 } });
      worker.on('error', (error) => this.#fail(error instanceof Error ? error : new Error(String(error))));
      worker.on('exit', (code) => this.#fail(new Error(`a worker thread ended by itself with ${code}`)));
      return worker;
    });
  }

  #fail(error: Error): void {
    this.#failure ??= error;
    this.#failed?.(this.#failure);
  }

  async *judge(judging: Judging, roots: readonly string[]): AsyncGenerator<JudgedRig> {
    const batches = Array.from({ length: Math.ceil(roots.length / batchSize) }, (_, i) => roots.slice(i * batchSize, (i + 1) * batchSize));
    const done = new Map<number, readonly JudgedRig[]>();
    let [sent, printed] = [0, 0];
    let wake = (): void => undefined;
    const send = (worker: Worker): void => {
      const batch: Batch = { number: sent, judging, roots: batches[sent]! };
      sent++;
      worker.postMessage(batch);
    };
    /** Workers that ran too far ahead of what is printed. */
    const idle = [...this.#workers, ...this.#workers];
    const feed = (): void => {
      while (idle.length > 0 && sent < batches.length && sent < printed + ahead * this.#workers.length) send(idle.shift()!);
    };
    const listeners = this.#workers.map((worker) => {
      const take = ({ number, rigs }: JudgedBatch): void => {
        done.set(number, rigs);
        idle.push(worker);
        wake();
      };
      worker.on('message', take);
      return () => worker.off('message', take);
    });
    try {
      while (printed < batches.length) {
        feed();
        const rigs = done.get(printed);
        if (rigs === undefined) {
          await new Promise<void>((resolve, reject) => {
            wake = resolve;
            this.#failed = reject;
            if (this.#failure !== undefined) reject(this.#failure);
          });
          continue;
        }
        done.delete(printed++);
        feed();
        yield* rigs;
      }
    } finally {
      for (const stop of listeners) stop();
    }
  }

  async stop(): Promise<void> {
    for (const worker of this.#workers) worker.removeAllListeners();
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
