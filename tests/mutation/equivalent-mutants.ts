import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Mutant } from './find-mutants.ts';

/** A change that no test can notice, because the program does the same with it. */
const equivalentMutant = z.strictObject({ file: z.string(), line: z.string(), change: z.string(), why: z.string().min(20) });
export type EquivalentMutant = z.infer<typeof equivalentMutant>;

export const readEquivalents = async (): Promise<EquivalentMutant[]> => z.array(equivalentMutant).parse(JSON.parse(await readFile(join(import.meta.dirname, 'equivalent.json'), 'utf8')));

export const isSame = (listed: EquivalentMutant, mutant: Mutant): boolean => listed.file === mutant.file && listed.line === mutant.text && listed.change === mutant.change;
