import { execFile, execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { program, type Said } from './world.ts';

/** The command line as a process of its own, started by a line of the shell in which `"$@"` stands for it. */
export const inShell = (cwd: string, line: string, ...words: string[]): Promise<Said> =>
  new Promise((done) => {
    execFile('/bin/sh', ['-c', line, 'sh', process.execPath, program, ...words], { cwd, encoding: 'utf8', maxBuffer: 1e8 }, (error, out, err) => done({ code: error === null ? 0 : Number(error.code), out, err }));
  });

/** Makes a folder in a folder with a path that is too long for the system, so that nobody can read it. */
export function unreadable(folder: string, name: string): void {
  execFileSync(process.execPath, ['-e', `const fs = require('node:fs'); for (const n of [${JSON.stringify(name)}, ...Array(25).fill('n'.repeat(200))]) { fs.mkdirSync(n); process.chdir(n); } fs.writeFileSync('x.rig', '')`], { cwd: folder });
  onTestFinished(() => void execFileSync('rm', ['-rf', join(folder, name)]));
}
