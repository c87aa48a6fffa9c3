import { afterEach, expect, test, vi } from 'vitest';
import { rigText } from '../support/rig-text.ts';
import { Client, pulling, settings, textFolder, type Diagnostic } from './client.ts';

// No rule is known to fail; one on a block of this name does here.
vi.mock('../../src-core/rules/judge-block.ts', async (original) => {
  const real = await original<typeof import('../../src-core/rules/judge-block.ts')>();
  const judgeBlock: typeof real.judgeBlock = (block, judging) => {
    if (block.name === 'poison') throw new Error('a rule fails');
    return real.judgeBlock(block, judging);
  };
  return { ...real, judgeBlock };
});

const folder = 'file:///rigs';
const uri = `${folder}/long.rig`;
const refreshing = { ...pulling, workspace: { configuration: true, diagnostics: { refreshSupport: true } } };
let client: Client;
afterEach(() => client.dispose());

const started = async (capabilities: object, answers: Readonly<Record<string, () => unknown>> = {}): Promise<void> => {
  client = new Client(textFolder(folder, new Map()), answers);
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

/** What was published of the long file since then, as codes. */
const publishedSince = (count: number): string[][] =>
  client.received.slice(count).flatMap(({ method, params }) => (method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri === uri ? [codesOf((params as { diagnostics: Diagnostic[] }).diagnostics)] : []));

test('a file that was told to the end is not told less on another day, or when another one takes it in', async () => {
  let asOf = settings.asOf;
  await started({ workspace: { configuration: true } }, { 'workspace/configuration': () => [{ check: { asOf } }] });
  client.open(uri, long);
  await client.published(uri, (d) => codesOf(d).includes('unknown-name'));
  let before = client.received.length;
  asOf = '2026-06-23';
  client.notify('workspace/didChangeConfiguration', { settings: null });
  client.change(uri, 2, { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '\n' });
  await client.message<{ uri: string; version?: number }>('textDocument/publishDiagnostics', () => publishedSince(before).length > 0);
  expect(publishedSince(before).filter((codes) => !codes.includes('unknown-name'))).toEqual([]);
  before = client.received.length;
  client.open(`${folder}/other.rig`, 'use "long.rig"\n');
  client.change(uri, 3, { range: { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } }, text: '' });
  await client.message('textDocument/publishDiagnostics', () => publishedSince(before).length > 0);
  expect(publishedSince(before).filter((codes) => !codes.includes('unknown-name'))).toEqual([]);
});

test('nothing more is asked or told once the server was told to shut down', async () => {
  await started(refreshing);
  client.open(uri, rigText(10_000));
  await client.pull(uri);
  await client.request('shutdown');
  const before = client.received.length;
  await new Promise((done) => setTimeout(done, 300));
  expect(client.received.slice(before)).toEqual([]);
});

test('a rule that fails on one file keeps nobody from the rest of another', async () => {
  await started(refreshing);
  client.open(uri, `${long}line poison {\n}\n`);
  const other = `${folder}/other.rig`;
  client.open(other, long);
  const [, first] = await Promise.all([client.pull(uri), client.pull(other)]);
  expect(codesOf(first.items)).not.toContain('unknown-name');
  await client.message('workspace/diagnostic/refresh');
  expect(codesOf((await client.pull(other)).items)).toContain('unknown-name');
});

test('settings that were never told keep nobody waiting once they change', async () => {
  let asked = 0;
  await started({ workspace: { configuration: true } }, { 'workspace/configuration': () => (++asked === 1 ? new Promise(() => undefined) : [{ check: settings }]) });
  client.open(uri, long.slice(long.indexOf('line torn')));
  await client.message('workspace/configuration');
  client.notify('workspace/didChangeConfiguration', { settings: null });
  expect(codesOf(await client.published(uri))).toContain('unknown-statement');
});

test('what was held back of one document is told though the next key falls in another', async () => {
  await started(refreshing);
  const [a, b] = [`${folder}/a.rig`, `${folder}/b.rig`];
  const text = 'line one {\n  strands 12\n}\n';
  for (const each of [a, b]) client.open(each, text);
  await Promise.all([client.pull(a), client.pull(b)]);
  client.change(a, 2, { range: { start: { line: 1, character: 2 }, end: { line: 1, character: 4 } }, text: 's' });
  expect(codesOf((await client.pull(a)).items)).not.toContain('unknown-statement');
  client.change(b, 2, { range: { start: { line: 1, character: 10 }, end: { line: 1, character: 12 } }, text: '16' });
  await client.pull(b);
  await client.message('workspace/diagnostic/refresh');
  expect(codesOf((await client.pull(a)).items)).toContain('unknown-statement');
});
