import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Batch, FromWorker } from './fleet-worker.ts';
import { RootJudge, type JudgedRig, type Judging } from './root-judge.ts';

/** Judges roots and hands them on in the order in which they were given. */
export type JudgeRoots = (judging: Judging, roots: readonly string[]) => AsyncIterable<JudgedRig>;

/** How long a thread works before it looks at signals, at a closed pipe and at what other threads have for it. */
const slice_ms = 20;

/** In this thread. */
export async function* judgeHere(judging: Judging, roots: readonly string[], judge = new RootJudge(judging)): AsyncGenerator<JudgedRig> {
  let started = performance.now();
  for (const root of roots) {
    yield judge.judge(root);
    if (performance.now() - started < slice_ms) continue;
    await setImmediate();
    started = performance.now();
  }
}

/** Roots that are sent to a worker at once. */
const batchSize = 16;
/** Batches for each thread that may be under way before the oldest of them is printed: what is held back stays little. */
const ahead = 4;
/** Room for what is new, in megabytes. More of it saves no time and is never given back. */
const young_MB = 6;

/**
 * Threads that judge beside this one. They load while this one still looks for files; until they have, and after, this one
 * judges as well, so that the first finding waits for nobody.
 */
export class FleetWorkers {
  readonly #workers: readonly Worker[];
  /** Each worker stands here once for every batch that it may be sent: the next waits while it judges the last. */
  readonly #idle: Worker[] = [];
  readonly #done = new Map<number, readonly JudgedRig[]>();
  #wake = (): void => undefined;
  #failure: unknown;
  #taken = 0;

  constructor(program: string, count: number) {
    this.#workers = Array.from({ length: count }, () => {
      const worker = new Worker(program, { argv: [], resourceLimits: { maxYoungGenerationSizeMb: young_MB } });
      worker.on('message', (message: FromWorker) => {
        this.#idle.push(worker);
        if (message === 'ready') this.#idle.push(worker);
        else {
          this.#done.set(message.number, message.rigs);
          this.#taken++;
        }
        this.#wake();
      });
      worker.on('error', (error) => this.#fail(error));
      worker.on('exit', (code) => this.#fail(new Error(`a thread that judges rigs ended with ${code}`)));
      return worker;
    });
  }

  /** How many batches the other threads have judged. */
  get taken(): number {
    return this.#taken;
  }

  #fail(error: unknown): void {
    this.#failure ??= error;
    this.#wake();
  }

  async *judge(judging: Judging, roots: readonly string[]): AsyncGenerator<JudgedRig> {
    const batches = Array.from({ length: Math.ceil(roots.length / batchSize) }, (_, i) => roots.slice(i * batchSize, (i + 1) * batchSize));
    const own = new RootJudge(judging);
    let [sent, printed] = [0, 0];
    const maySend = (): boolean => sent < batches.length && sent < printed + ahead * (this.#workers.length + 1);
    const feed = (): void => {
      while (this.#idle.length > 0 && maySend()) {
        const batch: Batch = { number: sent, judging, roots: batches[sent]! };
        sent++;
        this.#idle.shift()!.postMessage(batch);
      }
    };
    while (printed < batches.length) {
      if (this.#failure !== undefined) throw this.#failure;
      feed();
      const rigs = this.#done.get(printed);
      if (rigs !== undefined) {
        this.#done.delete(printed++);
        feed();
        yield* rigs;
        await setImmediate();
      } else if (maySend()) {
        const mine = sent++;
        const judged: JudgedRig[] = [];
        for await (const rig of judgeHere(judging, batches[mine]!, own)) {
          feed();
          if (mine === printed) yield rig;
          else judged.push(rig);
        }
        if (mine === printed) printed++;
        else this.#done.set(mine, judged);
      } else await new Promise<void>((resolve) => (this.#wake = resolve));
    }
  }

  async stop(): Promise<void> {
    for (const worker of this.#workers) worker.removeAllListeners();
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}
