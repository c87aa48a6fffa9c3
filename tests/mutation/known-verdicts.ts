import { createHash } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { root } from './bundle-test.ts';
import type { Mutant } from './find-mutants.ts';
import type { MutantVerdict, Verdict } from './verdict.ts';

interface KnownVerdict {
  readonly verdict: Verdict;
  readonly by?: string;
  readonly test?: string;
  /** Of the file with the mutant, and of what judged it: the test that noticed, or every test that did not. */
  readonly source: string;
  readonly judge: string;
}

const path = join(root, '.cache', 'mutation.json');
export const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);
const keyOf = (mutant: Mutant, ordinal: number): string => `${mutant.file}#${ordinal} ${mutant.change}`;

/**
 * What earlier runs found out, so that a run can be broken off and taken up again. A mutant that was noticed stays noticed while
 * its own file and the test file are unchanged; one that was not is tried again as soon as any file of the run changes.
 */
export class KnownVerdicts {
  readonly #known: Record<string, KnownVerdict>;
  /** Nothing from earlier runs counts; it is kept all the same, for mutants that this run does not try. */
  readonly #fresh: boolean;

  private constructor(known: Record<string, KnownVerdict>, fresh: boolean) {
    this.#known = known;
    this.#fresh = fresh;
  }

  static async read(fresh: boolean): Promise<KnownVerdicts> {
    const text = await readFile(path, 'utf8').catch(() => undefined);
    return new KnownVerdicts(text === undefined ? {} : (JSON.parse(text) as Record<string, KnownVerdict>), fresh);
  }

  find(mutant: Mutant, ordinal: number, hashes: RunHashes): MutantVerdict | undefined {
    const known = this.#known[keyOf(mutant, ordinal)];
    if (this.#fresh || known === undefined || known.source !== hashes.sources.get(mutant.file)) return undefined;
    if (known.judge !== (known.by === undefined ? hashes.everything : hashes.tests.get(known.by))) return undefined;
    const { verdict, by, test } = known;
    return { id: mutant.id, verdict, ...(by === undefined ? {} : { by }), ...(test === undefined ? {} : { test }) };
  }

  keep(mutant: Mutant, ordinal: number, found: MutantVerdict, hashes: RunHashes): void {
    const { verdict, by, test } = found;
    const judge = by === undefined ? hashes.everything : (hashes.tests.get(by) ?? '');
    this.#known[keyOf(mutant, ordinal)] = { verdict, by, test, source: hashes.sources.get(mutant.file)!, judge };
  }

  async write(): Promise<void> {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, JSON.stringify(this.#known));
  }
}

export interface RunHashes {
  readonly sources: ReadonlyMap<string, string>;
  readonly tests: ReadonlyMap<string, string>;
  readonly everything: string;
}
