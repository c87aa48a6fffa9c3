// What `node-engine.ts` gives, in the programs that are shipped: there it is a file of its own beside them.
import { isMainThread } from 'node:worker_threads';
import { loadEngine } from './compiled-code.ts';

export const { languageServer, commandLine, fleetWorker } = loadEngine(__filename, isMainThread);
