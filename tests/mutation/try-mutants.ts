import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { TestBundle } from './bundle-test.ts';
import type { Mutant } from './find-mutants.ts';
import type { MutantVerdict, WorkerMessage, WorkerTask } from './verdict.ts';

/** A worker that gives no sign for so long hangs in something that has no loop of ours. */
const silence_ms = 60_000;

/** Tries the mutants in a worker; when it hangs or dies, the mutant of that moment counts as one that runs on, and a new worker does the rest. */
export async function tryMutants(bundles: readonly TestBundle[], mutants: readonly Mutant[], highest: number, found: (verdict: MutantVerdict) => void, note: (text: string) => void): Promise<void> {
  const left = new Map(mutants.map((mutant) => [mutant.id, mutant]));
  const notes = new Set<string>();
  for (let failedAtOnce = 0; left.size > 0 && failedAtOnce < 3; ) {
    const pulse = new SharedArrayBuffer(8);
    const state = new Int32Array(pulse);
    const task: WorkerTask = { bundles, highest, mutants: [...left.values()], pulse };
    const worker = new Worker(join(import.meta.dirname, 'mutant-worker.ts'), { workerData: task, resourceLimits: { maxOldGenerationSizeMb: 1500 } });
    const ended = await new Promise<'done' | 'hangs' | string>((resolve) => {
      let last = -1;
      let since = performance.now();
      const watch = setInterval(() => {
        const now = Atomics.load(state, 0);
        if (now !== last) [last, since] = [now, performance.now()];
        else if (performance.now() - since > silence_ms) end('hangs');
      }, 500);
      const end = (how: string): void => {
        clearInterval(watch);
        resolve(how);
      };
      worker.on('message', (message: WorkerMessage) => {
        if (message.kind === 'done') return end('done');
        if (message.kind === 'note') {
          if (!notes.has(message.text)) note(message.text);
          notes.add(message.text);
          return;
        }
        left.delete(message.verdict.id);
        found(message.verdict);
      });
      worker.on('error', (error) => end(String(error)));
      worker.on('exit', (code) => end(`ended with ${code}`));
    });
    const tried = Atomics.load(state, 1);
    await worker.terminate();
    if (ended === 'done') return;
    note(`the worker ${ended} at mutant ${tried}`);
    if (left.has(tried)) {
      left.delete(tried);
      found({ id: tried, verdict: 'runs on' });
      failedAtOnce = 0;
    } else failedAtOnce++;
  }
}
