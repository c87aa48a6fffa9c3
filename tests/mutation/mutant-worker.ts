import { Script } from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import { importPackage, type TestBundle } from './bundle-test.ts';
import { collector, runTest, type CollectedTest } from './collect-tests.ts';
import type { Mutant } from './find-mutants.ts';
import { MutantSwitch, RunsOn } from './mutant-switch.ts';
import type { MutantVerdict, Verdict, WorkerMessage, WorkerTask } from './verdict.ts';

/** A mutant is stopped when its test takes this many times as long, or its loops go round this many times as often, and so much more. */
const patience = { times: 20, ms: 2_000, ticks: 200_000 };

interface LoadedTest {
  readonly file: LoadedFile;
  /** Its place in the file: the same test after the file is loaded again. */
  readonly index: number;
  readonly title: string;
  readonly ms: number;
  readonly ticks: number;
  readonly passes: Uint8Array;
}

interface LoadedFile {
  readonly bundle: TestBundle;
  readonly script: Script;
  tests: readonly CollectedTest[];
  readonly passedAtLoad: Uint8Array;
  readonly loadTicks: number;
  readonly loadMs: number;
}

const task = workerData as WorkerTask;
const pulse = new Int32Array(task.pulse);
const mutantSwitch = new MutantSwitch(task.highest + 1);
const packages: Record<string, unknown> = {};
const say = (message: WorkerMessage): void => parentPort!.postMessage(message);
const done = new Set<number>();

function settle(mutant: Mutant, verdict: Verdict, by?: LoadedTest | LoadedFile): void {
  done.add(mutant.id);
  const found: MutantVerdict = { id: mutant.id, verdict, ...(by === undefined ? {} : 'index' in by ? { by: by.file.bundle.file, test: by.title } : { by: by.bundle.file, test: 'loading the file' }) };
  say({ kind: 'verdict', verdict: found });
}

function load(script: Script): CollectedTest[] {
  const { vitest, tests } = collector();
  const run = script.runInThisContext() as (...values: unknown[]) => void;
  run({ ...packages, vitest }, ...mutantSwitch.functions);
  return tests;
}

/** Runs with a mutant active, or with none for 0, within limits taken from the run without. */
async function attempt(id: number, ticks: number, ms: number, run: () => unknown): Promise<unknown> {
  Atomics.add(pulse, 0, 1);
  Atomics.store(pulse, 1, id);
  mutantSwitch.active = id;
  mutantSwitch.ticks = 0;
  mutantSwitch.mostTicks = ticks * patience.times + patience.ticks;
  mutantSwitch.latest = performance.now() + ms * patience.times + patience.ms;
  try {
    await run();
    return undefined;
  } catch (error) {
    return error ?? new Error('thrown nothing');
  } finally {
    mutantSwitch.active = 0;
    Atomics.store(pulse, 1, 0);
  }
}

async function loadFile(bundle: TestBundle): Promise<LoadedFile | undefined> {
  const script = new Script(`(function ($packages, ${MutantSwitch.names.join(', ')}) {\n${bundle.code}\n})`, { filename: bundle.file });
  mutantSwitch.passed.fill(0);
  mutantSwitch.ticks = 0;
  mutantSwitch.mostTicks = Infinity;
  mutantSwitch.latest = Infinity;
  const before = performance.now();
  try {
    const tests = load(script);
    return { bundle, script, tests, passedAtLoad: mutantSwitch.passed.slice(), loadTicks: mutantSwitch.ticks, loadMs: performance.now() - before };
  } catch (error) {
    say({ kind: 'note', text: `${bundle.file} is left out: ${String(error).split('\n')[0]}` });
    return undefined;
  }
}

/** Every test once without a mutant: which of them pass, what they pass by, how long they take. */
async function loadTests(file: LoadedFile): Promise<LoadedTest[]> {
  const found: LoadedTest[] = [];
  for (const [index, test] of file.tests.entries()) {
    mutantSwitch.passed.fill(0);
    mutantSwitch.ticks = 0;
    const before = performance.now();
    const failure = await attempt(0, Infinity, Infinity, () => runTest(test));
    const loaded = { file, index, title: test.title, ms: performance.now() - before, ticks: mutantSwitch.ticks, passes: mutantSwitch.passed.slice() };
    if (failure !== undefined) say({ kind: 'note', text: `a test is left out, it fails without a mutant: ${file.bundle.file}: ${test.title}: ${String(failure).split('\n')[0]}` });
    else if ((await attempt(0, loaded.ticks, loaded.ms, () => runTest(test))) !== undefined) say({ kind: 'note', text: `a test is left out, it fails when it is run twice: ${file.bundle.file}: ${test.title}` });
    else found.push(loaded);
  }
  return found;
}

const again = (test: LoadedTest, id: number): Promise<unknown> => attempt(id, test.ticks, test.ms, () => runTest(test.file.tests[test.index]!));
const verdictOf = (failure: unknown): Verdict => (failure instanceof RunsOn ? 'runs on' : 'killed');

/** A mutant in a function: switched on for the test alone. */
async function tryInPlace(test: LoadedTest, mutant: Mutant): Promise<void> {
  const failure = await again(test, mutant.id);
  if (failure === undefined) return;
  if ((await again(test, 0)) === undefined) return settle(mutant, verdictOf(failure), test);
  // Something was left behind, perhaps by a mutant before this one: from scratch, then.
  test.file.tests = load(test.file.script);
  const afresh = await again(test, mutant.id);
  if (afresh !== undefined) settle(mutant, verdictOf(afresh), test);
  test.file.tests = load(test.file.script);
}

/** A mutant that is passed while the file is loaded: the file is loaded with it. */
async function tryLoading(file: LoadedFile, tests: readonly LoadedTest[], mutant: Mutant): Promise<void> {
  const failure = await attempt(mutant.id, file.loadTicks, file.loadMs, () => {
    file.tests = load(file.script);
  });
  if (failure !== undefined) settle(mutant, verdictOf(failure), file);
  else if (file.tests.length < tests.length) settle(mutant, 'killed', file);
  for (const test of tests) {
    if (done.has(mutant.id)) break;
    const failed = await again(test, mutant.id);
    if (failed !== undefined) settle(mutant, verdictOf(failed), test);
  }
}

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_260_701, endOnFailure: true });
for (const name of new Set(task.bundles.flatMap((bundle) => bundle.packages))) packages[name] = await importPackage(name);

const files: LoadedFile[] = [];
for (const bundle of task.bundles) {
  const file = await loadFile(bundle);
  if (file !== undefined) files.push(file);
}
const tests: LoadedTest[] = [];
for (const file of files) tests.push(...(await loadTests(file)));
tests.sort((a, b) => a.ms - b.ms);
const isStatic = (mutant: Mutant): boolean => files.some((file) => file.passedAtLoad[mutant.site] === 1);
const statics = task.mutants.filter(isStatic);
const others = task.mutants.filter((mutant) => !isStatic(mutant));

for (const test of tests) {
  for (const mutant of others) if (!done.has(mutant.id) && test.passes[mutant.site] === 1) await tryInPlace(test, mutant);
}
for (const mutant of others) {
  if (!done.has(mutant.id)) settle(mutant, tests.some((test) => test.passes[mutant.site] === 1) ? 'survived' : 'not reached');
}
const time = (of: readonly LoadedTest[]): number => of.reduce((sum, test) => sum + test.ms, 0);
const byFile = files.map((file) => ({ file, tests: tests.filter((test) => test.file === file) })).sort((a, b) => a.file.loadMs + time(a.tests) - b.file.loadMs - time(b.tests));
for (const mutant of statics) {
  for (const { file, tests: own } of byFile) {
    if (done.has(mutant.id)) break;
    if (file.passedAtLoad[mutant.site] === 1 || own.some((test) => test.passes[mutant.site] === 1)) await tryLoading(file, own, mutant);
  }
  if (!done.has(mutant.id)) settle(mutant, 'survived');
}
say({ kind: 'done' });
