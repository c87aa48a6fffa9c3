// Prints how long the shipped programs take, as ratios to a Node that does nothing where that is the peer.
//   node tests/scripts/bench.ts [starts] [--quick] [--sizes 100,1000] [--runs N] [--edits N] [--workspace 100] [--cold N] [--only NAME,NAME]
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { glob } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildBundles } from '../../esbuild.config.mjs';
import { startPeer } from '../clients/support/start-peer.ts';
import { options } from '../bench/options.ts';
import { root } from './run.ts';

const runs = options.starts;
const file = (path: string): string => join(root, path);

async function median(run: () => unknown): Promise<number> {
  // The first run warms the file cache; a few more gather what is compiled.
  for (let i = 0; i < 4; i++) await run();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const started = performance.now();
    const took = await run();
    times.push(typeof took === 'number' ? took : performance.now() - started);
  }
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

const node = (...words: string[]) => () => {
  const { status, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
  if (status === null || 1 < status) throw new Error(`${words.join(' ')}\n${stderr}`);
};

async function initialize(): Promise<number> {
  const started = performance.now();
  const peer = startPeer(process.execPath, [file('dist/server.cjs'), '--stdio']);
  await peer.request('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  const took = performance.now() - started;
  await peer.request('shutdown', null);
  peer.notify('exit', undefined);
  await peer.ended;
  return took;
}

const show = (name: string, time_ms: number, limit_ms: number, peer = ''): void =>
  console.log(`${time_ms <= limit_ms ? 'within' : 'BEYOND'} ${name}: ${time_ms.toFixed(1)} ms, limit ${limit_ms.toFixed(0)} ms${peer}`);

await buildBundles(['server', 'cli'], { minify: true });
// Starts are those of somebody who has used it before, unless a line says otherwise.
const cache = mkdtempSync(join(tmpdir(), 'linewright-bench-cache-'));
process.env['LINEWRIGHT_CACHE'] = cache;
process.once('exit', () => rmSync(cache, { recursive: true, force: true }));
const bare = await median(node('-e', '0'));
console.log(`       a Node that does nothing: ${bare.toFixed(1)} ms (median of ${runs})`);
const server = await median(initialize);
show('server, from its start to the answer to initialize', server, 2 * bare + 100, ` (${(server / bare).toFixed(2)} times the bare Node)`);
const cli = await median(node('dist/linewright.cjs', 'check', 'examples/plover.rig'));
show('command line, one example from start to finish', cli, 500, ` (${(cli / bare).toFixed(2)} times the bare Node)`);

// Every further measurement is a module in tests/bench that prints its own lines when it is loaded.
for await (const path of glob('tests/bench/*.bench.ts', { cwd: root })) await import(pathToFileURL(file(path)).href);
