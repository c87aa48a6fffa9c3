import { expect, vi } from 'vitest';

export type Run = () => unknown;

/** One test of a file, ready to be run again and again. */
export interface CollectedTest {
  readonly title: string;
  /** Runs once for all tests of its blocks. */
  readonly before: readonly Once[];
  readonly beforeEach: readonly Run[];
  readonly afterEach: readonly Run[];
  readonly run: Run;
}

class Once {
  readonly #run: Run;
  #result: unknown;
  #done = false;
  constructor(run: Run) {
    this.#run = run;
  }
  /** A hook that fails fails every test behind it. */
  run(): unknown {
    if (!this.#done) {
      this.#done = true;
      this.#result = this.#run();
    }
    return this.#result;
  }
}

interface Block {
  readonly title: string;
  readonly before: Once[];
  readonly beforeEach: Run[];
  readonly afterEach: Run[];
}

type Body = (...values: unknown[]) => unknown;
const bodyOf = (rest: readonly unknown[]): Body => rest.find((part) => typeof part === 'function') as Body;
const rowsOf = (table: readonly unknown[]): unknown[][] => table.map((row) => (Array.isArray(row) ? (row as unknown[]) : [row]));

/**
 * What a test file imports from vitest, with a collector in the place of its runner: vitest makes a new process for each
 * run, and thousands of mutants want thousands of runs.
 */
export function collector(): { readonly vitest: Readonly<Record<string, unknown>>; readonly tests: CollectedTest[] } {
  const tests: CollectedTest[] = [];
  let blocks: Block[] = [{ title: '', before: [], beforeEach: [], afterEach: [] }];

  const addTest = (title: string, run: Run): void => {
    tests.push({
      title: [...blocks.slice(1).map((block) => block.title), title].join(' > '),
      before: blocks.flatMap((block) => block.before),
      beforeEach: blocks.flatMap((block) => block.beforeEach),
      afterEach: blocks.flatMap((block) => block.afterEach),
      run,
    });
  };
  const addBlock = (title: string, run: Run): void => {
    const outer = blocks;
    blocks = [...blocks, { title, before: [], beforeEach: [], afterEach: [] }];
    run();
    blocks = outer;
  };
  const context = { expect };
  const test = Object.assign((title: string, ...rest: unknown[]) => addTest(title, () => bodyOf(rest)(context)), {
    each: (table: readonly unknown[]) => (title: string, ...rest: unknown[]) => rowsOf(table).forEach((row, i) => addTest(`${title} [${i}]`, () => bodyOf(rest)(...row))),
    for: (table: readonly unknown[]) => (title: string, ...rest: unknown[]) => table.forEach((row, i) => addTest(`${title} [${i}]`, () => bodyOf(rest)(row, context))),
  });
  const describe = Object.assign((title: string, ...rest: unknown[]) => addBlock(title, () => bodyOf(rest)()), {
    each: (table: readonly unknown[]) => (title: string, ...rest: unknown[]) => rowsOf(table).forEach((row, i) => addBlock(`${title} [${i}]`, () => bodyOf(rest)(...row))),
    for: (table: readonly unknown[]) => (title: string, ...rest: unknown[]) => table.forEach((row, i) => addBlock(`${title} [${i}]`, () => bodyOf(rest)(row))),
  });
  const innermost = (): Block => blocks.at(-1)!;
  return {
    tests,
    vitest: {
      expect,
      vi,
      test,
      it: test,
      describe,
      suite: describe,
      beforeAll: (run: Run) => void innermost().before.push(new Once(run)),
      beforeEach: (run: Run) => void innermost().beforeEach.push(run),
      afterEach: (run: Run) => void innermost().afterEach.push(run),
      // What is put away after the last test does not change what a test finds.
      afterAll: () => undefined,
    },
  };
}

/** Runs one test, hooks included; throws what it throws. */
export async function runTest(test: CollectedTest): Promise<void> {
  for (const once of test.before) await waitFor(once.run());
  for (const hook of test.beforeEach) await waitFor(hook());
  try {
    await waitFor(test.run());
  } finally {
    for (const hook of test.afterEach) await waitFor(hook());
  }
}

/** Waits only for what has to be waited for. */
const waitFor = (result: unknown): unknown => (typeof (result as PromiseLike<unknown> | undefined)?.then === 'function' ? result : undefined);
