// Everything behind the two programs of this folder, in one file. Each part is set going when it is asked for.
export const languageEngine = () => import('./language-server/engine.ts');
export const diskFolder = async () => (await import('./language-server/disk-files.ts')).diskFiles;
export const commandLine = async () => (await import('./cli/run.ts')).run;
export const fleetWorker = async () => (await import('./cli/fleet/fleet-worker.ts')).runFleetWorker;
