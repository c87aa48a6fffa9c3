import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { cacheFolder, keepCompiled, readCompiled } from '../../server/compiled-code.ts';
import { startPeer, type Peer } from '../clients/support/start-peer.ts';

const root = resolve(import.meta.dirname, '../..');
const top = mkdtempSync(join(tmpdir(), 'linewright-compiled-'));
afterAll(() => rmSync(top, { recursive: true, force: true }));

let folder: string;
let count = 0;
beforeEach(() => {
  folder = join(top, String(count++));
});

const posix = process.platform !== 'win32';
const source = Buffer.from('the source');
const code = Buffer.from('what was compiled of it');

describe('compiled code', () => {
  test('comes back for its source', () => {
    const path = join(folder, 'deep', 'a.compiled');
    keepCompiled(path, source, { code, runs: 2 });
    expect(readCompiled(path, source)).toEqual({ code, runs: 2 });
  });

  test('does not come back for another source', () => {
    const path = join(folder, 'a.compiled');
    keepCompiled(path, source, { code, runs: 1 });
    expect(readCompiled(path, Buffer.from('the sourcE'))).toBeUndefined();
  });

  test('does not come back when a bit of it differs', () => {
    const path = join(folder, 'a.compiled');
    keepCompiled(path, source, { code, runs: 1 });
    const good = readFileSync(path);
    // All but the count of runs and what fills it up, which is no code.
    for (let at = 0; at < good.length; at++) {
      if (4 <= at && at < 8) continue;
      const bad = Buffer.from(good);
      bad[at]! ^= 1;
      writeFileSync(path, bad);
      expect([at, readCompiled(path, source)]).toEqual([at, undefined]);
    }
    for (const length of [0, 3, 16, 20, good.length - 1]) {
      writeFileSync(path, good.subarray(0, length));
      expect([length, readCompiled(path, source)]).toEqual([length, undefined]);
    }
  });

  test.runIf(posix)('is not taken from where others can write', () => {
    const path = join(folder, 'a.compiled');
    keepCompiled(path, source, { code, runs: 1 });
    expect([statSync(folder).mode & 0o777, statSync(path).mode & 0o777]).toEqual([0o700, 0o600]);
    chmodSync(path, 0o622);
    expect(readCompiled(path, source)).toBeUndefined();
    chmodSync(path, 0o600);
    chmodSync(folder, 0o777);
    expect(readCompiled(path, source)).toBeUndefined();
  });

  test.runIf(posix)('is not put where others can write', () => {
    mkdirSync(folder);
    chmodSync(folder, 0o777);
    const path = join(folder, 'a.compiled');
    keepCompiled(path, source, { code, runs: 1 });
    expect(existsSync(path)).toBe(false);
  });

  test('a folder that is none stops nobody', () => {
    writeFileSync(folder, '');
    const path = join(folder, 'a.compiled');
    keepCompiled(path, source, { code, runs: 1 });
    expect(readCompiled(path, source)).toBeUndefined();
  });
});

test('its folder is the one that is given, or the one where the system keeps such', () => {
  const at = (env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string | undefined => cacheFolder(env, platform, () => '/home/crew');
  expect(at({ LINEWRIGHT_CACHE: resolve('/tmp/x') }, 'linux')).toBe(resolve('/tmp/x'));
  expect(at({ LINEWRIGHT_CACHE: 'off' }, 'linux')).toBeUndefined();
  expect(at({ LINEWRIGHT_CACHE: '' }, 'linux')).toBeUndefined();
  expect(at({ LINEWRIGHT_CACHE: 'some/where' }, 'linux')).toBeUndefined();
  expect(at({}, 'linux')).toBe(join('/home/crew', '.cache', 'linewright'));
  expect(at({ XDG_CACHE_HOME: resolve('/var/c') }, 'linux')).toBe(join(resolve('/var/c'), 'linewright'));
  expect(at({ XDG_CACHE_HOME: 'here' }, 'linux')).toBe(join('/home/crew', '.cache', 'linewright'));
  expect(at({}, 'darwin')).toBe(join('/home/crew', 'Library', 'Caches', 'linewright'));
  expect(at({}, 'win32')).toBeUndefined();
  expect(at({ LOCALAPPDATA: resolve('/local') }, 'win32')).toBe(join(resolve('/local'), 'linewright', 'cache'));
});

describe('the shipped command line', () => {
  beforeAll(() => buildBundles(['cli'], { folder: join(top, 'built') }));
  const built = join(top, 'built', 'dist');

  function check(cache: string, program = join(built, 'linewright.cjs')): string {
    const { stdout, stderr, status } = spawnSync(process.execPath, [program, 'check', 'examples/plover.rig', '--on', '2026-06-22'], { cwd: root, encoding: 'utf8', env: { ...process.env, LINEWRIGHT_CACHE: cache } });
    expect([stderr, status]).toEqual(['', 1]);
    return stdout;
  }
  const runs = (): number => readFileSync(join(folder, 'linewright.compiled'))[4]!;

  test('says the same with compiled code, and adds to it what another run compiles', () => {
    const size = (): number => statSync(join(folder, 'linewright.compiled')).size;
    expect(spawnSync(process.execPath, [join(built, 'linewright.cjs'), '--version'], { env: { ...process.env, LINEWRIGHT_CACHE: folder } }).status).toBe(0);
    const little = size();
    const without = check('off');
    expect(check(folder)).toBe(without);
    const more = size();
    expect(more).toBeGreaterThan(1.2 * little);
    expect(check(folder)).toBe(without);
    expect([size(), runs()]).toEqual([more, 3]);
  });

  test('is looked at in the first runs only', () => {
    check(folder);
    const path = join(folder, 'linewright.compiled');
    const bytes = readFileSync(path);
    bytes[4] = 7;
    writeFileSync(path, bytes);
    const seen: number[] = [];
    for (let run = 0; run < 3; run++) {
      check(folder);
      seen.push(runs());
    }
    expect(seen).toEqual([8, 8, 8]);
  });

  test('goes by its file when that is another than was compiled', () => {
    check(folder);
    const other = join(top, 'other');
    mkdirSync(other);
    const engine = readFileSync(join(built, 'engine.cjs'), 'utf8');
    // Not a letter longer: the length alone would not tell.
    const changed = engine.replace('no findings', 'NO FINDINGS').replaceAll('below the ', 'BELOW THE ');
    expect(changed.length).toBe(engine.length);
    writeFileSync(join(other, 'engine.cjs'), changed);
    writeFileSync(join(other, 'linewright.cjs'), readFileSync(join(built, 'linewright.cjs')));
    expect(check(folder, join(other, 'linewright.cjs'))).toContain('BELOW THE ');
    expect(runs()).toBe(1);
  });

  test('starts afresh from rubbish', () => {
    check(folder);
    writeFileSync(join(folder, 'linewright.compiled'), 'LWC2 rubbish'.repeat(100));
    expect(check(folder)).toBe(check('off'));
    expect(runs()).toBe(1);
  });
});

test('a server adds to what is kept however often it was started for nothing', async () => {
  await buildBundles(['server'], { folder: join(top, 'served') });
  const env = { LINEWRIGHT_CACHE: folder };
  const session = async (work: (peer: Peer) => Promise<unknown>): Promise<void> => {
    const peer = startPeer(process.execPath, [join(top, 'served', 'dist', 'server.cjs'), '--stdio'], {}, env);
    await peer.request('initialize', { processId: null, rootUri: null, capabilities: { textDocument: { diagnostic: {} } } });
    await work(peer);
    await peer.request('shutdown');
    peer.notify('exit');
    await peer.ended;
  };
  const size = (): number => statSync(join(folder, 'server.compiled')).size;
  for (let start = 0; start < 9; start++) await session(async () => undefined);
  const little = size();
  const uri = 'untitled:a.rig';
  await session(async (peer) => {
    peer.notify('initialized', {});
    peer.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'rig', version: 1, text: readFileSync(join(root, 'examples/plover.rig'), 'utf8') } });
    await peer.request('textDocument/diagnostic', { textDocument: { uri } });
  });
  expect(size()).toBeGreaterThan(1.1 * little);
});
