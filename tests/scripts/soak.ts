// Ten thousand edits and requests at random over fifty files: the answers stay those of a fresh server, and memory stays flat.
//   node tests/scripts/soak.ts [--seed N] [--steps N] [--files N]
import { parseArgs } from 'node:util';
import { buildBundles } from '../../esbuild.config.mjs';
import { soakServer } from '../soak/soak-server.ts';

const { values } = parseArgs({ options: { seed: { type: 'string' }, steps: { type: 'string', default: '10000' }, files: { type: 'string', default: '50' } } });
const seed = values.seed === undefined ? Date.now() % 1_000_000 : Number(values.seed);
await buildBundles(['server']);
console.log(`seed ${seed}`);
const run = { steps: Number(values.steps), files: Number(values.files), seed, compareEvery: 500, log: console.log };
// Memory is read from a server that lives through all of it; killing comes after.
const { compared, differences, faults, memory } = await soakServer({ ...run, kills: false });
const killed = await soakServer({ ...run, steps: Math.ceil(run.steps / 5), seed: seed + 1, kills: true });

const mean = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0) / numbers.length;
const [early, late] = [mean(memory.slice(5, 10)), mean(memory.slice(-5))];
const grows = late > early * 1.25;
console.log(`${compared + killed.compared} answers compared, ${differences.length + killed.differences.length} differ; ${faults.length + killed.faults.length} requests failed`);
console.log(`memory ${early.toFixed(0)} MB in the second quarter, ${late.toFixed(0)} MB in the last: ${grows ? 'IT GROWS' : 'flat'}`);
for (const says of [...differences, ...faults, ...killed.differences, ...killed.faults].slice(0, 10)) console.log(says);
process.exitCode = differences.length + faults.length + killed.differences.length + killed.faults.length > 0 || grows ? 1 : 0;
