// Drives the language with made-up texts until something goes wrong, a million by default. Every input has a number and can
// be made again alone.
//   node tests/scripts/fuzz.ts [--seed N] [--from N] [--count N] [--every N]
// `--every N`: each N-th input is asked everything that an editor asks (20 by default). Goes on after the last number
// printed with `--seed` and `--from`.
import { parseArgs } from 'node:util';
import { fuzzInput, shrink, tryInput } from '../fuzz/fuzz-input.ts';

const { values } = parseArgs({ options: { seed: { type: 'string' }, from: { type: 'string', default: '0' }, count: { type: 'string', default: '1000000' }, every: { type: 'string', default: '20' } } });
const seed = values.seed === undefined ? Date.now() % 1_000_000 : Number(values.seed);
const from = Number(values.from);
const count = Number(values.count);
const every = Math.max(1, Number(values.every));
if (![seed, from, count].every((n) => Number.isInteger(n) && 0 <= n)) throw new Error('--seed, --from and --count take whole numbers');

/** Longer than any honest input takes, the first runs of cold code included. */
const slow_ms = 2000;
console.log(`seed ${seed}, inputs ${from} to ${from + count - 1}`);
const started = performance.now();
const failed = new Map<string, number>();
let slowest = { i: -1, ms: 0 };
for (let i = from; i < from + count; i++) {
  const depth = i % every === 0 ? 'everything' : 'judge';
  const { text, random } = fuzzInput(seed, i);
  // Its own work, and not what else the machine was busy with meanwhile.
  const before = process.cpuUsage();
  const wrong = tryInput(text, random, depth);
  const { user, system } = process.cpuUsage(before);
  const ms = (user + system) / 1000;
  if (ms > slowest.ms) slowest = { i, ms };
  if (ms > slow_ms) wrong.push(`took ${ms.toFixed(0)} ms`);
  if (wrong.length > 0) {
    // The same fault comes back in many inputs: it is told once.
    const what = wrong[0]!.split('\n').slice(0, 2).join(' ').replace(/\d+/g, '0');
    const times = (failed.get(what) ?? 0) + 1;
    failed.set(what, times);
    if (times === 1) {
      const fails = (t: string): boolean => (tryInput(t, fuzzInput(seed, i).random, depth)[0] ?? '').split('\n')[0]!.replace(/\d+/g, '0') === wrong[0]!.split('\n')[0]!.replace(/\d+/g, '0');
      console.log(`input ${i} of seed ${seed}:\n${wrong[0]!}\n--- shortest text found\n${JSON.stringify(fails(text) ? shrink(text, fails) : text)}\n---`);
    }
  }
  if ((i - from + 1) % 20_000 === 0) {
    const rate = (i - from + 1) / ((performance.now() - started) / 1000);
    console.log(`${i - from + 1} inputs, ${rate.toFixed(0)} a second, ${failed.size} faults; goes on with --seed ${seed} --from ${i + 1} --count ${count - (i - from + 1)}`);
  }
}
console.log(`${count} inputs of seed ${seed}: ${failed.size} faults; the slowest was input ${slowest.i} with ${slowest.ms.toFixed(0)} ms`);
process.exitCode = failed.size === 0 ? 0 : 1;
