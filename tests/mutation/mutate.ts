// How much the tests notice: makes small wrong changes in the mechanics, the units and the rules, and counts those that no test
// notices. `npm run mutate -- --help` says what it takes.
import { readdir, readFile } from 'node:fs/promises';
import { join, matchesGlob } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleTest, root, type TestBundle } from './bundle-test.ts';
import { isSame, readEquivalents } from './equivalent-mutants.ts';
import { findMutants, type Mutant } from './find-mutants.ts';
import { hashOf, KnownVerdicts, type RunHashes } from './known-verdicts.ts';
import { tryMutants } from './try-mutants.ts';
import type { MutantVerdict } from './verdict.ts';

/** Share of the mutants that has to be noticed, in each folder. */
const wanted = 0.85;

/** Which tests may notice a mutant in a folder; of these only those that pass by it are run. */
const testsOf: Readonly<Record<string, readonly string[]>> = {
  units: ['tests/units/**', 'tests/published/**', 'tests/mechanics/**', 'tests/property/statics-*'],
  mechanics: ['tests/mechanics/**', 'tests/published/**', 'tests/planner/**', 'tests/property/{rope,statics-*}.test.ts'],
  rules: ['tests/rules/**', 'tests/assess/**', 'tests/property/pull.test.ts'],
};

const { values: asked } = parseArgs({
  options: {
    only: { type: 'string', multiple: true },
    sample: { type: 'string' },
    tests: { type: 'string', multiple: true },
    fresh: { type: 'boolean', default: false },
    help: { type: 'boolean', default: false },
  },
});
if (asked.help) {
  console.log(`npm run mutate -- [--only GLOB]... [--sample N] [--tests GLOB]... [--fresh]
  --only GLOB   only files that match, such as 'src-core/units/**'
  --sample N    at most N mutants of each folder, always the same ones
  --tests GLOB  only these test files
  --fresh       nothing from .cache/mutation.json, where earlier verdicts stand`);
  process.exit(0);
}

const filesBelow = async (folder: string): Promise<string[]> =>
  (await readdir(join(root, folder), { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1).replaceAll('\\', '/')).sort();
const matches = (path: string, globs: readonly string[] | undefined): boolean => globs === undefined || globs.some((glob) => matchesGlob(path, glob));

const started = performance.now();
const known = await KnownVerdicts.read(asked.fresh);
const equivalents = await readEquivalents();
const usedEquivalents = new Set<unknown>();
const testFiles = (await filesBelow('tests')).filter((file) => file.endsWith('.test.ts'));
const scores: string[] = [];
let isLow = false;

for (const folder of Object.keys(testsOf)) await tryFolder(folder);
console.log('\n' + scores.join('\n'));
console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);
const stale = asked.only === undefined && asked.sample === undefined && asked.tests === undefined ? equivalents.filter((listed) => !usedEquivalents.has(listed)) : [];
for (const listed of stale) console.log(`listed as equivalent, but there is no such mutant, or a test notices it: ${listed.file}: ${listed.change}`);
process.exitCode = isLow || stale.length > 0 ? 1 : 0;

async function tryFolder(folder: string): Promise<void> {
  const sources = (await filesBelow(`src-core/${folder}`)).filter((file) => file.endsWith('.ts') && matches(file, asked.only));
  const mutated = new Map<string, string>();
  const sourceHashes = new Map<string, string>();
  const all: Mutant[] = [];
  for (const file of sources) {
    const text = await readFile(join(root, file), 'utf8');
    const found = findMutants(text, file, all.length + 1);
    mutated.set(file, found.code);
    sourceHashes.set(file, hashOf(text));
    all.push(...found.mutants);
  }
  if (all.length === 0) return;

  const bundles: TestBundle[] = [];
  for (const file of testFiles.filter((path) => matches(path, testsOf[folder]) && matches(path, asked.tests))) {
    try {
      bundles.push(await bundleTest(file, mutated));
    } catch (error) {
      console.log(`${file} is left out: ${String(error).split('\n')[0]}`);
    }
  }
  const testHashes = new Map<string, string>();
  for (const { file } of bundles) testHashes.set(file, hashOf(await readFile(join(root, file), 'utf8')));
  const hashes: RunHashes = { sources: sourceHashes, tests: testHashes, everything: hashOf(bundles.map((bundle) => bundle.code).join('\n')) };

  const ordinals = new Map<number, number>();
  const perFile = new Map<string, number>();
  for (const mutant of all) {
    const ordinal = (perFile.get(mutant.file) ?? 0) + 1;
    perFile.set(mutant.file, ordinal);
    ordinals.set(mutant.id, ordinal);
  }
  const listed = new Map(all.flatMap((mutant) => equivalents.filter((one) => isSame(one, mutant)).map((one) => [mutant.id, one] as const)));
  const sampled = sample(all, (mutant) => `${mutant.file} ${ordinals.get(mutant.id)} ${mutant.change}`);
  const verdicts = new Map<number, MutantVerdict>();
  for (const mutant of sampled) {
    const earlier = known.find(mutant, ordinals.get(mutant.id)!, hashes);
    if (earlier !== undefined) verdicts.set(mutant.id, earlier);
  }
  const open = sampled.filter((mutant) => !verdicts.has(mutant.id));
  console.log(`\n${folder}: ${all.length} mutants in ${sources.length} files, ${sampled.length} to try, ${verdicts.size} known from before; ${bundles.length} test files`);
  let shownAt = performance.now();
  let keptAt = performance.now();
  await tryMutants(bundles, open, all.length, (verdict) => {
    const mutant = all[verdict.id - 1]!;
    verdicts.set(verdict.id, verdict);
    known.keep(mutant, ordinals.get(mutant.id)!, verdict, hashes);
    const now = performance.now();
    if (now - shownAt > 10_000) {
      shownAt = now;
      console.log(`  ${verdicts.size} of ${sampled.length}`);
    }
    if (now - keptAt > 30_000) {
      keptAt = now;
      void known.write();
    }
  }, (text) => console.log(`  ${text}`));
  await known.write();
  report(folder, sampled, verdicts, listed);
}

function report(folder: string, tried: readonly Mutant[], verdicts: ReadonlyMap<number, MutantVerdict>, listed: ReadonlyMap<number, unknown>): void {
  const isNoticed = (mutant: Mutant): boolean => ['killed', 'runs on'].includes(verdicts.get(mutant.id)?.verdict ?? '');
  const equivalent = tried.filter((mutant) => listed.has(mutant.id) && !isNoticed(mutant));
  for (const mutant of equivalent) usedEquivalents.add(listed.get(mutant.id));
  const counted = tried.filter((mutant) => !equivalent.includes(mutant));
  const noticed = counted.filter(isNoticed).length;
  for (const mutant of counted) if (!isNoticed(mutant)) console.log(`${verdicts.get(mutant.id)?.verdict ?? 'not tried'}  ${mutant.file}:${mutant.line}  ${mutant.change}`);
  const share = counted.length === 0 ? 1 : noticed / counted.length;
  if (share < wanted) isLow = true;
  scores.push(`${folder}: ${noticed} of ${counted.length} noticed, ${(Math.floor(share * 1000) / 10).toFixed(1)} %${equivalent.length === 0 ? '' : `, ${equivalent.length} more change nothing`}${share < wanted ? `, below ${wanted * 100} %` : ''}`);
}

/** The same ones each time, spread over all files. */
function sample(all: readonly Mutant[], keyOf: (mutant: Mutant) => string): readonly Mutant[] {
  const most = asked.sample === undefined ? all.length : Number(asked.sample);
  if (!(most < all.length)) return all;
  const ranked = all.map((mutant) => ({ mutant, rank: hashOf(keyOf(mutant)) })).sort((a, b) => (a.rank < b.rank ? -1 : 1));
  return ranked.slice(0, most).map(({ mutant }) => mutant).sort((a, b) => a.id - b.id);
}
