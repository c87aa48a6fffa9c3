// Runs the one big file of this folder as `require` would, with what Node compiled of it the last time, where that was kept.
import { isAscii } from 'node:buffer';
import { closeSync, fstatSync, mkdirSync, openSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync, writeSync, type Stats } from 'node:fs';
import Module, { createRequire } from 'node:module';
import { homedir } from 'node:os';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';

type Engine = typeof import('./node-engine.ts');

/** Says where compiled code is kept, or `off`. */
const variable = 'LINEWRIGHT_CACHE';

/** Of 4 bytes each: the mark, how often it was looked at, the checksum of the code, its length. Then the code, and the source it was compiled of. */
const mark = Buffer.from('LWC2');
const headerLength = 16;
/**
 * In so many runs it is looked whether more was compiled than is kept, since each may use what none did before. A server looks each time:
 * nobody waits for it then.
 */
const lookedAt = 8;
/** So much more is worth writing. */
const grown = 1.03;

/** The folder for compiled code; undefined where none is to be kept. */
export function cacheFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform, home: () => string): string | undefined {
  const given = env[variable];
  if (given !== undefined) return isAbsolute(given) ? given : undefined;
  const local = env['LOCALAPPDATA'];
  if (platform === 'win32') return local === undefined || !isAbsolute(local) ? undefined : join(local, 'linewright', 'cache');
  if (platform === 'darwin') return join(home(), 'Library', 'Caches', 'linewright');
  const xdg = env['XDG_CACHE_HOME'];
  return join(xdg !== undefined && isAbsolute(xdg) ? xdg : join(home(), '.cache'), 'linewright');
}

/** Compiled code runs as it is, so it is taken only from where nobody else could have put it. */
const ours = ({ uid, mode }: Stats): boolean => process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);

/** Finds what a disk may do to a file. It does not guard against people, which the owner of the folder does. */
function checksum(bytes: Uint8Array): number {
  let [a, b] = [1, bytes.length];
  // A view of words begins where a word does.
  const words = bytes.byteOffset % 4 === 0 ? new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2) : new Int32Array(Uint8Array.from(bytes.subarray(0, bytes.length & ~3)).buffer);
  for (let i = 0; i < words.length; i++) {
    a = (a + words[i]!) | 0;
    b = (b + a) | 0;
  }
  for (let i = words.length << 2; i < bytes.length; i++) {
    a = (a + bytes[i]!) | 0;
    b = (b + a) | 0;
  }
  return (a ^ Math.imul(b, 0x9e3779b1)) >>> 0;
}

export interface Compiled {
  readonly code: Buffer;
  /** In how many runs it was looked at, up to `lookedAt`. */
  readonly runs: number;
}

/** What was kept for exactly this source; undefined when nothing was, or when a bit of it went wrong. */
export function readCompiled(path: string, source: Uint8Array): Compiled | undefined {
  let file: number | undefined;
  try {
    if (!ours(statSync(dirname(path)))) return undefined;
    file = openSync(path, 'r');
    if (!ours(fstatSync(file))) return undefined;
    const bytes = readFileSync(file);
    if (bytes.length <= headerLength || !bytes.subarray(0, mark.length).equals(mark)) return undefined;
    const end = headerLength + bytes.readUInt32LE(12);
    if (!bytes.subarray(end).equals(source)) return undefined;
    const code = bytes.subarray(headerLength, end);
    return bytes.readUInt32LE(8) === checksum(code) ? { code, runs: bytes[mark.length]! } : undefined;
  } catch {
    return undefined;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** Keeps compiled code where `readCompiled` finds it. A folder that cannot be written, or that others can write, is left alone. */
export function keepCompiled(path: string, source: Uint8Array, { code, runs }: Compiled): void {
  const beside = `${path}.${process.pid}`;
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    if (!ours(statSync(dirname(path)))) return;
    const header = Buffer.alloc(headerLength);
    mark.copy(header);
    header[mark.length] = runs;
    header.writeUInt32LE(checksum(code), 8);
    header.writeUInt32LE(code.length, 12);
    writeFileSync(beside, Buffer.concat([header, code, source]), { mode: 0o600 });
    renameSync(beside, path);
  } catch {
    try {
      unlinkSync(beside);
    } catch {
      // It was never written.
    }
  }
}

/** Counts a run that compiled nothing worth keeping. */
function countRun(path: string, runs: number): void {
  try {
    const file = openSync(path, 'r+');
    writeSync(file, Uint8Array.of(runs), 0, 1, mark.length);
    closeSync(file);
  } catch {
    // It is counted another time.
  }
}

function folder(): string | undefined {
  try {
    return cacheFolder(process.env, process.platform, homedir);
  } catch {
    return undefined;
  }
}

/**
 * Everything behind the program that asks, which is `engine.cjs` beside it. What was compiled is kept for each program, since each uses other
 * parts of it; with `keep` false it is only read. Without a folder to keep it in, the file is compiled as Node always does.
 */
export function loadEngine(program: string, keep: boolean): Engine {
  const path = join(dirname(program), 'engine.cjs');
  const inFolder = folder();
  if (inFolder === undefined) return createRequire(program)(path) as Engine;
  const source = readFileSync(path);
  const kept = join(inFolder, `${basename(program, '.cjs')}.compiled`);
  const found = readCompiled(kept, source);
  const script = new Script(Module.wrap(source.toString(isAscii(source) ? 'latin1' : 'utf8')), { filename: path, columnOffset: -Module.wrap('|').indexOf('|'), ...(found === undefined ? {} : { cachedData: found.code }) });
  const runs = found === undefined || script.cachedDataRejected === true ? 0 : found.runs;
  if (keep && (runs < lookedAt || basename(program) === 'server.cjs')) keepLater(keeper(script, kept, source, runs, found?.code.length ?? 0));
  const module = { exports: {} };
  (script.runInThisContext() as (...given: unknown[]) => void)(module.exports, createRequire(path), module, path, dirname(path));
  return module.exports as Engine;
}

/** What puts away what was compiled by then. On its own, so that it holds nothing but what it needs. */
const keeper = (script: Script, kept: string, source: Uint8Array, runs: number, length: number) => (): void => {
  const code = script.createCachedData();
  const counted = Math.min(runs + 1, lookedAt);
  if (runs > 0 && code.length < length * grown) countRun(kept, counted);
  else keepCompiled(kept, source, { code, runs: counted });
};

/** At the end of the program, or when it has run for a while: an editor may end its server without a word. */
function keepLater(keeping: () => void): void {
  let due: (() => void) | undefined = keeping;
  const once = (): void => {
    due?.();
    due = undefined;
  };
  process.once('exit', once);
  setTimeout(once, 15_000).unref();
}
