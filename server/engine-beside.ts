// What `node-engine.ts` gives, in the programs that are shipped: there it is a file of its own beside them.
import { createRequire } from 'node:module';
import { loadEngine } from './compiled-code.ts';

/** The server has no threads, and need not load what would tell. */
const isThread = (): boolean => !__filename.endsWith('server.cjs') && !(createRequire(__filename)('node:worker_threads') as typeof import('node:worker_threads')).isMainThread;

export const { languageServer, commandLine, fleetWorker } = loadEngine(__filename, !isThread());
