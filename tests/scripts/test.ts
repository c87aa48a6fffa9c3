// The everyday tests: types, then every test that needs no editor. Closes with one plain line of counts.
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { root, runNode } from './run.ts';

let passed = 0;
let failed = 0;
const count = (good: boolean): void => void (good ? (passed += 1) : (failed += 1));

const tsc = join('node_modules', 'typescript', 'bin', 'tsc');
for (const project of ['.', 'src-core', 'client/view']) {
  const good = (await runNode([tsc, '-p', project])) === 0;
  console.log(`${good ? 'ok' : 'not ok'} types of ${project === '.' ? 'everything' : project}`);
  count(good);
}

// The tests of the command line and the bare client run what we ship, so it is made first.
count((await runNode(['esbuild.config.mjs'])) === 0);

const report = join(root, 'dist', 'test-report.json');
await rm(report, { force: true });
const vitest = join('node_modules', 'vitest', 'vitest.mjs');
const ended = await runNode([vitest, 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]);

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
}
const counts = await readFile(report, 'utf8').then((text) => JSON.parse(text) as Report, () => undefined);
passed += counts?.numPassedTests ?? 0;
failed += counts?.numFailedTests ?? 0;
// A file that cannot be loaded fails the run without failing a test in it.
if (ended !== 0 && (counts?.numFailedTests ?? 0) === 0) failed += 1;

console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
