import { CancellationTokenSource } from 'vscode-jsonrpc/node';
import { afterEach, expect, test } from 'vitest';
import { Client, pulling, textFolder } from './client.ts';

const folder = 'file:///rigs';
const uri = `${folder}/plover.rig`;
const text = 'strap trunk {\n  wll  4 t\n  wdth  3\n}\n';

let client: Client;
afterEach(() => client.dispose());

const hover = (): Promise<unknown> => client.request('textDocument/hover', client.at(uri, 0, 8));
const logged = (): string[] => client.received.filter((m) => m.method === 'window/logMessage').map((m) => (m.params as { message: string }).message);

/** A session begins, and everything is answered in it. */
async function works(): Promise<void> {
  await client.start(pulling, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
  client.open(uri, text);
  expect(await hover()).not.toBeNull();
  expect((await client.pull(uri)).items!.length).toBeGreaterThan(0);
}

test('what comes before the session is refused, and the session is none the worse', async () => {
  client = new Client();
  client.open(uri, text);
  for (const method of ['textDocument/hover', 'textDocument/diagnostic', 'linewright/rules']) await expect(client.request(method, {})).rejects.toMatchObject({ code: -32002 });
  await works();
});

test.each([{}, 'x', [null], [{ name: 'rigs' }], [{ uri: 5 }]])('folders that are none are refused, and the next beginning is taken: %j', async (workspaceFolders) => {
  client = new Client();
  await expect(client.request('initialize', { processId: null, rootUri: null, capabilities: {}, workspaceFolders })).rejects.toMatchObject({ code: -32602 });
  await expect(hover()).rejects.toMatchObject({ code: -32002 });
  await works();
});

test('a beginning that says nothing of the client does not keep the next from being taken', async () => {
  client = new Client();
  await expect(client.request('initialize', { processId: null })).rejects.toHaveProperty('code');
  await works();
});

test('a session begins once, and nothing is answered behind its end', async () => {
  client = new Client();
  await works();
  await expect(client.request('initialize', { processId: null, rootUri: null, capabilities: {} })).rejects.toMatchObject({ code: -32600 });
  expect(await hover()).not.toBeNull();
  expect(await client.request('shutdown')).toBeNull();
  await expect(hover()).rejects.toMatchObject({ code: -32600 });
});

test('a request without parameters is answered like one whose parameters are empty', async () => {
  client = new Client();
  await works();
  expect(await client.request('linewright/rules')).toHaveProperty('rules.length');
  expect(await client.request('linewright/checkWorkspace')).toMatchObject({ files: 1 });
  expect(await client.connection.sendRequest('textDocument/hover')).toBeNull();
  expect(logged()).toEqual([]);
});

test.each([null, 'all', { start: { line: -1, character: 0 }, end: { line: 0, character: 0 } }, { start: { line: 1.5, character: 0 }, end: { line: 2, character: 0 } }, { start: { line: 1, character: 0 } }])('a change of a range that is none is logged, and the text stays: %j', async (range) => {
  client = new Client();
  await works();
  const before = await client.pull(uri);
  client.notify('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [{ range, text: '' }] });
  expect(await client.pull(uri, before.resultId)).toEqual({ kind: 'unchanged', resultId: before.resultId });
  expect(logged()).toEqual([`textDocument/didChange: a range in ${uri} is none; the change is not taken`]);
  client.change(uri, 3, { text: '' });
  expect((await client.pull(uri)).items).toEqual([]);
});

test.each(['textDocument/diagnostic', 'workspace/diagnostic'])('%s that is cancelled is not answered as if nothing were found', async (method) => {
  client = new Client(textFolder(folder, new Map([['other.rig', 'strap s {\n  wll  4 t\n}\n']])));
  await works();
  const source = new CancellationTokenSource();
  const answer = client.connection.sendRequest(method, { textDocument: { uri }, previousResultIds: [] }, source.token);
  source.cancel();
  await expect(answer).rejects.toMatchObject({ code: -32800 });
});

test('a pull of the workspace that waits is told that it was cancelled', async () => {
  client = new Client(textFolder(folder, new Map()));
  await works();
  const source = new CancellationTokenSource();
  const answer = client.connection.sendRequest('workspace/diagnostic', { previousResultIds: [] }, source.token);
  await client.settled();
  await client.settled();
  source.cancel();
  await expect(answer).rejects.toMatchObject({ code: -32800 });
});

test('lists with something else in them are read as far as they go', async () => {
  client = new Client(textFolder(folder, new Map([['other.rig', 'strap s {\n  wlll  4 t\n}\n']])));
  await works();
  expect(await client.request('workspace/willRenameFiles', { files: [null, 5] })).toBeNull();
  for (const previousResultIds of [5, [null], [{ uri: 4 }]]) expect(await client.request('workspace/diagnostic', { previousResultIds })).toMatchObject({ items: [{ uri: `${folder}/other.rig` }] });
  client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [null], removed: 'x' } });
  await client.settled();
  expect(logged()).toEqual([]);
});

test('folders come and go for a client that says that it has folders', async () => {
  client = new Client(textFolder('file:///more', new Map([['other.rig', text]])));
  await client.start({ workspace: { workspaceFolders: true } });
  client.notify('workspace/didChangeWorkspaceFolders');
  client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: 'file:///more', name: 'more' }], removed: [] } });
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 1 });
  expect(logged()).toEqual([]);
});

test.each([
  [{ check: { asOf: 5 } }, 'linewright.check.asOf is 5, which is not text; it is not taken'],
  [{ check: 5 }, 'linewright.check is 5, which is not an object; it is not taken'],
  [{ codeLens: { enabled: 'yes' } }, 'linewright.codeLens.enabled is "yes", which is not `true` or `false`; it is not taken'],
])('settings of the wrong type are logged: %j', async (settings, says) => {
  client = new Client(undefined, { 'workspace/configuration': () => [settings] });
  await client.start(pulling);
  client.open(uri, text);
  await client.pull(uri);
  expect(logged()).toEqual([says]);
});
