import { afterEach, expect, test } from 'vitest';
import { rigText } from '../support/rig-text.ts';
import { Client, pulling, textFolder, type Diagnostic } from './client.ts';

const folder = 'file:///rigs';
const uri = `${folder}/long.rig`;
const refreshing = { ...pulling, workspace: { configuration: true, diagnostics: { refreshSupport: true } } };
let client: Client;
afterEach(() => client.dispose());

const started = async (capabilities: object): Promise<void> => {
  client = new Client(textFolder(folder, new Map()));
  await client.start(capabilities, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
};

// One word that cannot be read, and one name that stands for nothing: the first is seen in the text, the second when its block is judged.
const long = `${rigText(2000)}\nline torn {\n  strnds 12\n}\n\nchain lost {\n  main outboard -> nowhere\n}\n`;
const codesOf = (items: readonly Diagnostic[] | undefined): string[] => (items ?? []).map((d) => d.code);
const refreshes = (): number => client.received.filter((m) => m.method === 'workspace/diagnostic/refresh').length;

test('a long file is answered for as it is written at first, and the client is asked to ask again', async () => {
  await started(refreshing);
  client.open(uri, long);
  const first = codesOf((await client.pull(uri)).items);
  expect(first).toContain('unknown-statement');
  expect(first).not.toContain('unknown-name');
  await client.message('workspace/diagnostic/refresh');
  const then = codesOf((await client.pull(uri)).items);
  expect(then).toContain('unknown-statement');
  expect(then).toContain('unknown-name');
});

test('a client that cannot be asked to ask again is told all at once', async () => {
  await started(pulling);
  client.open(uri, long);
  expect(codesOf((await client.pull(uri)).items)).toContain('unknown-name');
});

test('a client that waits to be told is told twice', async () => {
  await started({});
  client.open(uri, long);
  const first = codesOf(await client.published(uri));
  expect(first).toContain('unknown-statement');
  expect(first).not.toContain('unknown-name');
  expect(codesOf(await client.published(uri, (d) => codesOf(d).includes('unknown-name')))).toContain('unknown-statement');
});

test('a short file is told at once, and nobody is asked to ask again', async () => {
  await started(refreshing);
  client.open(uri, long.slice(long.indexOf('line torn')));
  expect(codesOf((await client.pull(uri)).items)).toContain('unknown-name');
  await client.settled();
  expect(refreshes()).toBe(0);
});

test('many files that come together are all answered for before the most of them are judged', async () => {
  await started(refreshing);
  const uris = Array.from({ length: 30 }, (_, i) => `${folder}/${i}.rig`);
  for (const [i, each] of uris.entries()) client.open(each, rigText(60, i).replace('strands', 'strnds') + '\nchain lost {\n  main outboard -> nowhere\n}\n');
  const first = await Promise.all(uris.map(async (each) => codesOf((await client.pull(each)).items)));
  expect(first.filter((codes) => codes.includes('unknown-name')).length).toBeLessThan(uris.length);
  await client.message('workspace/diagnostic/refresh');
  for (const each of uris) expect(codesOf((await client.pull(each)).items)).toContain('unknown-name');
});

test('what is typed while the rest is judged counts', async () => {
  await started(refreshing);
  client.open(uri, long);
  await client.pull(uri);
  const last = long.split('\n').length - 3;
  client.change(uri, 2, { range: { start: { line: last, character: 0 }, end: { line: last, character: 0 } }, text: '  out  10 m\n' });
  const hover = client.request('textDocument/hover', client.at(uri, 1, 1));
  await client.message('workspace/diagnostic/refresh');
  await hover;
  client.change(uri, 3, { range: { start: { line: last, character: 0 }, end: { line: last + 1, character: 0 } }, text: '' });
  const incremental = (await client.pull(uri)).items;
  client.dispose();
  await started(pulling);
  client.open(uri, long);
  expect(incremental).toEqual((await client.pull(uri)).items);
});

test('a file that is closed before the rest is judged owes nothing', async () => {
  await started(refreshing);
  client.open(uri, long);
  await client.pull(uri);
  client.notify('textDocument/didClose', { textDocument: { uri } });
  await client.message('workspace/diagnostic/refresh');
  expect((await client.pull(uri)).items).toEqual([]);
});
