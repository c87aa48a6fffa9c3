import { fstatSync, writeSync } from 'node:fs';
import { getSystemErrorMap } from 'node:util';
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

/** Node takes a file for written when only the first part of a text had room on its disk. */
function writeAll(text: string): void {
  for (let left: Uint8Array = Buffer.from(text); left.length > 0; ) left = left.subarray(writeSync(1, left));
}

const isFile = (): boolean => {
  try {
    return fstatSync(1).isFile();
  } catch {
    return false;
  }
};
const write = isFile() ? writeAll : (text: string): void => void process.stdout.write(text);

const io = (cwd: string): Io => ({
  cwd,
  out: (text) => {
    if (terminal) progress?.clear();
    try {
      write(text);
    } catch (error) {
      cannotWrite(error as NodeJS.ErrnoException);
    }
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
});

/** What a shell tells of a program that a closed pipe has ended. */
const closedPipe = 141;

/**
 * A reader that has seen enough, such as `head`, closes the pipe: that is no failure of ours, but the verdict was not
 * reached, so it is none of the codes that tell one.
 */
function cannotWrite({ code, errno, message }: NodeJS.ErrnoException): never {
  if (code === 'EPIPE') process.exit(closedPipe);
  process.stderr.write(`linewright: the output could not be written: ${getSystemErrorMap().get(errno ?? 0)?.[1] ?? message}\n`);
  process.exit(2);
}

function presentFolder(): string {
  try {
    return process.cwd();
  } catch {
    process.stderr.write('linewright: the present folder is not there\n');
    process.exit(2);
  }
}

function main(): void {
  process.stdout.on('error', cannotWrite);
  process.stderr.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? closedPipe : 2));
  const world = io(presentFolder());
  import('./node-engine.ts')
    .then(async ({ commandLine }) => (await commandLine())(process.argv.slice(2), world))
    .then(
      (code) => {
        progress?.clear();
        if (code !== undefined) process.exitCode = code;
      },
      (error: unknown) => {
        world.err(`linewright: a fault of its own, which should be reported\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
        process.exitCode = 2;
      },
    );
}

// The same file is what the threads start with that judge many rigs side by side.
if (isMainThread) main();
else void import('./node-engine.ts').then(async ({ fleetWorker }) => (await fleetWorker())());
