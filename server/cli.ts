import type { Io } from './cli/io.ts';

/** The day on the wall calendar of whoever runs this, not of Greenwich. */
function localDay(): string {
  const now = new Date();
  return [String(now.getFullYear()).padStart(4, '0'), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-');
}

const terminal = process.stdout.isTTY === true;

const io: Io = {
  cwd: process.cwd(),
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  today: localDay,
  styled: terminal && (process.env['NO_COLOR'] ?? '') === '' && process.env['TERM'] !== 'dumb',
  width: terminal ? Math.max(60, Math.min(120, process.stdout.columns)) : undefined,
};

// A reader that has seen enough, such as `head`, closes the pipe: that is no failure of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

import('./node-engine.ts').then(async ({ commandLine }) => (await commandLine())(process.argv.slice(2), io)).then(
  (code) => {
    if (code !== undefined) process.exitCode = code;
  },
  (error: unknown) => {
    io.err(`linewright: a fault of its own, which should be reported\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    process.exitCode = 2;
  },
);
