import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { startPeer, type Peer } from './support/start-peer.ts';

const path = (file: string): string => fileURLToPath(new URL(`../../${file}`, import.meta.url));
const examples = new URL('../../examples/', import.meta.url).href;

let peer: Peer;
let folder: string | undefined;
beforeAll(() => buildBundles(['server']));
afterEach(() => {
  peer.kill();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
});

interface Probe {
  readonly waits: readonly string[];
  readonly opened: readonly string[];
  readonly cpu_ms: number;
}

async function probe(file: string): Promise<Probe> {
  rmSync(file, { force: true });
  peer.signal('SIGUSR2');
  while (!existsSync(file)) await pause(10);
  for (;;) {
    try {
      return JSON.parse(readFileSync(file, 'utf8')) as Probe;
    } catch {
      await pause(10);
    }
  }
}

// A signal of this kind is not known everywhere.
test.runIf(process.platform !== 'win32')('a server with nothing to do waits for its editor and for nothing else', async () => {
  folder = mkdtempSync(join(tmpdir(), 'linewright-idle-'));
  const file = join(folder, 'probe.json');
  peer = startPeer(process.execPath, ['--require', path('tests/clients/support/probe.cjs'), path('dist/server.cjs'), '--stdio', `--clientProcessId=${process.pid}`], {}, { LINEWRIGHT_PROBE: file });
  await peer.request('initialize', { processId: process.pid, rootUri: examples, capabilities: { textDocument: { diagnostic: {} } } });
  peer.notify('initialized', {});
  const uri = `${examples}plover.rig`;
  peer.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'rig', version: 1, text: readFileSync(new URL(uri), 'utf8') } });
  const { items } = await peer.request<{ items: readonly { uri: string; resultId: string }[] }>('workspace/diagnostic', { previousResultIds: [] });
  expect(items.length).toBeGreaterThan(0);
  // Held until something happens: this is what an editor waits with.
  void peer.request('workspace/diagnostic', { previousResultIds: items.map(({ uri: of, resultId }) => ({ uri: of, value: resultId })) }).catch(() => undefined);
  await peer.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 0 } });
  const before = await probe(file);
  await pause(1500);
  const after = await probe(file);
  expect(after.waits.filter((wait) => !['PipeWrap', 'TTYWrap', 'SignalWrap', 'FSReqCallback', 'CloseReq'].includes(wait))).toEqual([]);
  expect(after.opened).toEqual([]);
  expect(after.cpu_ms - before.cpu_ms).toBeLessThan(60);
});

test('it ends with its editor, whose process it does not watch', async () => {
  peer = startPeer(process.execPath, [path('dist/server.cjs'), '--stdio']);
  await peer.request('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  peer.hangUp();
  expect(await peer.ended).toBe(1);
  peer = startPeer(process.execPath, [path('dist/server.cjs'), '--stdio']);
  await peer.request('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  await peer.request('shutdown');
  peer.hangUp();
  expect(await peer.ended).toBe(0);
});

test('killed in the middle of typing, the next server knows what was typed', async () => {
  const uri = 'file:///rigs/typed.rig';
  const text = 'strap trunk {\n  wlll  4 t\n}\n';
  const open = async (words: string, version: number): Promise<string[]> => {
    peer = startPeer(process.execPath, [path('dist/server.cjs'), '--stdio']);
    await peer.request('initialize', { processId: null, rootUri: null, capabilities: { textDocument: { diagnostic: {} } } });
    peer.notify('initialized', {});
    peer.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'rig', version, text: words } });
    return (await peer.request<{ items: readonly { code: string }[] }>('textDocument/diagnostic', { textDocument: { uri } })).items.map((d) => d.code);
  };
  expect(await open(text, 1)).toContain('unknown-statement');
  peer.notify('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [{ range: { start: { line: 1, character: 3 }, end: { line: 1, character: 4 } }, text: '' }] });
  peer.kill();
  await peer.ended;
  // An editor holds the text and sends all of it again.
  expect(await open(text.replace('wlll', 'wll'), 2)).not.toContain('unknown-statement');
});
