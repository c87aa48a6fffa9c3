// Everything behind the two programs of this folder, in one file. Each part is set going when it is asked for.
export const languageServer = async () => (await import('./stdio.ts')).serveStdio;
export const commandLine = async () => (await import('./cli/run.ts')).run;
export const fleetWorker = async () => (await import('./cli/fleet/fleet-worker.ts')).runFleetWorker;
