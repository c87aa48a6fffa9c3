// The shipped command line over a fleet: many files of 60 lines, a tenth of them with findings.
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rigText, rigTextDay } from '../support/rig-text.ts';
import { figure, median, printTable } from './figures.ts';
import { options } from './options.ts';
import { peakMemory } from './process-figures.ts';

const program = fileURLToPath(new URL('../../dist/linewright.cjs', import.meta.url));

interface Run {
  readonly total_ms: number;
  readonly first_ms: number;
  readonly peak_MB: number;
  readonly bytes: string;
}

async function makeFleet(folder: string, count: number): Promise<void> {
  for (let i = 0; i < count; i++) {
    const path = join(folder, `base-${i % 50}`, `truck-${String(i).padStart(4, '0')}.rig`);
    const text = rigText(60, i + 1);
    if (i < 50) await mkdir(dirname(path), { recursive: true });
    await writeFile(path, i % 10 === 0 ? text.replace('bury 72 d', 'bury 46 d') : text);
  }
}

function runOnce(folder: string, words: readonly string[]): Promise<Run> {
  return new Promise((done, fail) => {
    const started = performance.now();
    const hash = createHash('sha256');
    let first_ms = NaN;
    let peak_MB = 0;
    const child = spawn(process.execPath, [program, 'check', '--on', rigTextDay, ...words], { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] });
    const look = setInterval(() => void (peak_MB = Math.max(peak_MB, peakMemory(child.pid!) || 0)), 25);
    child.stdout.on('data', (data: Buffer) => {
      if (Number.isNaN(first_ms)) first_ms = performance.now() - started;
      hash.update(data);
    });
    child.on('error', fail);
    child.on('close', (code) => {
      clearInterval(look);
      if (code !== 1) fail(new Error(`check of a fleet ended with ${code}`));
      else done({ total_ms: performance.now() - started, first_ms, peak_MB, bytes: hash.digest('hex') });
    });
  });
}

console.log('\nThe command line over a fleet, files of 60 lines');
const rows: string[][] = [];
const bytes = new Map<number, Set<string>>();
for (const count of options.workspace.length === 0 ? [] : new Set([Math.max(...options.workspace), 5000])) {
  const folder = await mkdtemp(join(tmpdir(), 'linewright-fleet-'));
  try {
    await makeFleet(folder, count);
    for (const jobs of ['1', '2']) {
      const runs: Run[] = [];
      for (let i = 0; i < options.runs; i++) runs.push(await runOnce(folder, ['--jobs', jobs]));
      for (const run of runs) bytes.set(count, (bytes.get(count) ?? new Set()).add(run.bytes));
      const of = (key: 'total_ms' | 'first_ms' | 'peak_MB'): string => figure(median(runs.map((run) => run[key])));
      rows.push([`${count} files, ${jobs === '1' ? '1 thread' : `${jobs} threads`}`, of('total_ms'), of('first_ms'), of('peak_MB')]);
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
printTable(['', 'total ms', 'first output ms', 'peak MB'], rows);
for (const [count, seen] of bytes) console.log(`${seen.size === 1 ? 'within' : 'BEYOND'} ${count} files: ${seen.size} different outputs, limit 1`);
