import { isMainThread } from 'node:worker_threads';
import type { Io } from './cli/io.ts';
import { progressLine } from './cli/progress-line.ts';

/** The day on the wall calendar of whoever runs this, not of Greenwich. */
function localDay(): string {
  const now = new Date();
  return [String(now.getFullYear()).padStart(4, '0'), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-');
}

const terminal = process.stdout.isTTY === true;
const progress = process.stderr.isTTY === true && process.env['TERM'] !== 'dumb' ? progressLine((text) => void process.stderr.write(text), () => performance.now()) : undefined;

const io: Io = {
  cwd: process.cwd(),
  out: (text) => {
    if (terminal) progress?.clear();
    process.stdout.write(text);
  },
  err: (text) => {
    progress?.clear();
    process.stderr.write(text);
  },
  today: localDay,
  styled: terminal && (process.env['NO_COLOR'] ?? '') === '' && process.env['TERM'] !== 'dumb',
  width: terminal ? Math.max(60, Math.min(120, process.stdout.columns)) : undefined,
  program: process.argv[1],
  ...(progress === undefined ? {} : { progress: progress.show }),
};

function main(): void {
  // A reader that has seen enough, such as `head`, closes the pipe: that is no failure of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  import('./node-engine.ts')
    .then(async ({ commandLine }) => (await commandLine())(process.argv.slice(2), io))
    .then(
      (code) => {
        progress?.clear();
        if (code !== undefined) process.exitCode = code;
      },
      (error: unknown) => {
        io.err(`linewright: a fault of its own, which should be reported\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
        process.exitCode = 2;
      },
    );
}

// The same file is what the threads start with that judge many rigs side by side.
if (isMainThread) main();
else void import('./node-engine.ts').then(async ({ fleetWorker }) => (await fleetWorker())());
