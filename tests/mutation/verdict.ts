import type { Mutant } from './find-mutants.ts';
import type { TestBundle } from './bundle-test.ts';

/** `survived`: every test that reaches it still passes. `not reached`: no test passes the place at all. */
export type Verdict = 'killed' | 'runs on' | 'survived' | 'not reached';

export interface MutantVerdict {
  readonly id: number;
  readonly verdict: Verdict;
  /** The test file that noticed. */
  readonly by?: string;
  readonly test?: string;
}

export interface WorkerTask {
  readonly bundles: readonly TestBundle[];
  /** Highest number in any bundle. */
  readonly highest: number;
  /** Those to be tried. */
  readonly mutants: readonly Mutant[];
  /** Counts up while the worker is alive; the second place holds the mutant that is being tried. */
  readonly pulse: SharedArrayBuffer;
}

export type WorkerMessage =
  | { readonly kind: 'verdict'; readonly verdict: MutantVerdict }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'done' };
