import { homedir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

const { values, positionals } = parseArgs({
  strict: false,
  allowPositionals: true,
  options: {
    /** Two minutes: sizes up to 10,000 lines, one run of each. */
    quick: { type: 'boolean', default: false },
    sizes: { type: 'string' },
    runs: { type: 'string' },
    edits: { type: 'string' },
    workspace: { type: 'string' },
    cold: { type: 'string' },
    /** Servers by name; `none` leaves the comparison out. */
    only: { type: 'string' },
  },
});

const quick = values.quick === true;
const numbers = (given: unknown, otherwise: string): number[] => (typeof given === 'string' ? given : otherwise).split(',').filter(Boolean).map(Number);

/** How much is measured: what stands behind `npm run bench --`. */
export const options = {
  /** Starts of each program. */
  starts: Number(positionals[0] ?? (quick ? 5 : 15)),
  sizes: numbers(values.sizes, quick ? '100,1000,10000' : '100,1000,10000,50000'),
  runs: numbers(values.runs, quick ? '1' : '3')[0]!,
  edits: numbers(values.edits, quick ? '8' : '20')[0]!,
  workspace: numbers(values.workspace, quick ? '100' : '100,1000,5000'),
  cold: numbers(values.cold, quick ? '3' : '7')[0]!,
  only: typeof values.only === 'string' ? values.only.split(',') : undefined,
  peersFolder: process.env['LINEWRIGHT_PEERS_CACHE'] ?? join(homedir(), '.cache', 'linewright-peers'),
};
