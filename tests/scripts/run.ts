import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

interface How {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs a script with the Node that runs us, in full view; answers with its exit code. */
export function runNode(words: readonly string[], { cwd = root, env = {} }: How = {}): Promise<number> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, words, { cwd, stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, ...env } });
    child.on('error', fail);
    child.on('exit', (code) => done(code ?? 1));
  });
}
