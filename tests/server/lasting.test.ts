import { afterEach, expect, test } from 'vitest';
import { Client, pulling, textFolder, type Diagnostic, type Range } from './client.ts';

// What a server has to stand over a working day: typing, checkouts, merges, midnight.

const folder = 'file:///rigs';
const at = (path: string): string => `${folder}/${path}`;
const uri = at('plover.rig');
const main = 'line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d stitched\n}\n';
const trunk = (limit: string): string => `strap trunk {\n  wll  ${limit}\n}\n`;

let client: Client;
afterEach(() => client.dispose());
const range = (line: number, from: number, to: number): Range => ({ start: { line, character: from }, end: { line, character: to } });
const codes = (diagnostics: readonly Diagnostic[] | undefined): string[] => (diagnostics ?? []).map((d) => d.code);

async function started(texts: Map<string, string>, capabilities: unknown = pulling, reads: string[] = []): Promise<void> {
  client = new Client(textFolder(folder, texts, reads));
  await client.start(capabilities, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
}
const published = (): string[][] => client.received.filter((m) => m.method === 'textDocument/publishDiagnostics').map((m) => codes((m.params as { diagnostics: Diagnostic[] }).diagnostics));

test('what is wrong with the line that is being typed is said when the typing rests, what is mended at once', async () => {
  await started(new Map(), { workspace: { configuration: true } });
  client.open(uri, main);
  await client.published(uri);
  const before = performance.now();
  client.change(uri, 2, { range: range(2, 2, 9), text: 'strnds' });
  await client.published(uri, (d) => codes(d).includes('unknown-statement'));
  const rested = performance.now() - before;
  expect(rested).toBeGreaterThan(600);
  const count = published().length;
  client.change(uri, 3, { range: range(2, 2, 8), text: 'strands' });
  await client.message('textDocument/publishDiagnostics', () => count < published().length);
  expect(published().at(-1)).not.toContain('unknown-statement');
  // A change of several lines is no typing.
  const pasted = performance.now();
  client.change(uri, 4, { range: { start: { line: 8, character: 1 }, end: { line: 8, character: 1 } }, text: '\nstrap s {\n  wlll  4 t\n}' });
  await client.message('textDocument/publishDiagnostics', () => published().at(-1)!.includes('unknown-statement'));
  expect(performance.now() - pasted).toBeLessThan(rested);
});

test('a finding elsewhere that a typed line causes is said at once', async () => {
  await started(new Map(), { workspace: { configuration: true } });
  client.open(uri, `${main}\nwinch w {\n  rated    42 kN\n  carries  main\n}\n`);
  await client.published(uri);
  const held = performance.now();
  client.change(uri, 2, { range: range(2, 2, 9), text: 'strnds' });
  await client.published(uri, (d) => codes(d).includes('unknown-statement'));
  const rested = performance.now() - held;
  const before = performance.now();
  client.change(uri, 3, { range: range(0, 5, 9), text: 'blue' });
  await client.published(uri, (d) => d.some(({ code, range: r }) => code === 'unknown-name' && r.start.line === 12));
  expect(performance.now() - before).toBeLessThan(rested);
});

test('conflict markers are one message, and the rest of the file still counts', async () => {
  await started(new Map());
  const torn = main.replace('  breaking  92 kN\n', '<<<<<<< HEAD\n  breaking  92 kN\n=======\n  breaking  95 kN\n>>>>>>> other\n');
  client.open(uri, `${torn}\nline tail {\n  material  HMPE\n  diameter  10 mm\n  length    5 m\n  outboard  eye bury 46 d taper 24 d\n}\n`);
  const found = codes((await client.pull(uri)).items);
  expect(found.filter((code) => code.includes('conflict'))).toHaveLength(1);
  expect(found).toContain('bury-too-short');
  expect(await client.request('textDocument/hover', client.at(uri, 16, 8))).not.toBeNull();
});

test('a checkout of many files is taken in once', async () => {
  const texts = new Map(Array.from({ length: 300 }, (_, i): [string, string] => [`r${i}.rig`, trunk('4')]));
  const refresh = { workspace: { configuration: true, diagnostics: { refreshSupport: true } }, textDocument: { diagnostic: {} } };
  await started(texts, refresh);
  client.open(at('r0.rig'), trunk('4 t'));
  await client.request('workspace/diagnostic', { previousResultIds: [] });
  const before = client.received.filter((m) => m.method === 'workspace/diagnostic/refresh').length;
  for (const path of texts.keys()) texts.set(path, trunk('5'));
  client.notify('workspace/didChangeWatchedFiles', { changes: [...texts.keys()].map((path) => ({ uri: at(path), type: 2 })) });
  const { items } = await client.request<{ items: { uri: string; items: Diagnostic[] }[] }>('workspace/diagnostic', { previousResultIds: [] });
  expect(items.filter((i) => i.items.some((d) => d.code === 'bare-number' && d.message.includes('5')))).toHaveLength(299);
  expect(client.received.filter((m) => m.method === 'workspace/diagnostic/refresh').length - before).toBe(1);
});

test('a file that is taken away and made again leaves nothing stale', async () => {
  const texts = new Map([['gear.rig', trunk('4 t')], ['other.rig', trunk('4')]]);
  await started(texts);
  const kit = 'use "gear.rig"\n\nkit bag {\n  carries  trunk\n}\n';
  client.open(uri, kit);
  expect(codes((await client.pull(uri)).items)).not.toContain('unknown-name');
  const changed = (path: string, type: number): void => client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: at(path), type }] });
  for (let round = 0; round < 3; round++) {
    texts.delete('gear.rig');
    changed('gear.rig', 3);
    expect(codes((await client.pull(uri)).items)).toContain('use-missing');
    expect(await client.request('textDocument/definition', client.at(uri, 3, 12))).toBeNull();
    texts.set('gear.rig', `# made again\n${trunk('4 t')}`);
    changed('gear.rig', 1);
    expect(codes((await client.pull(uri)).items)).not.toContain('use-missing');
    expect(await client.request('textDocument/definition', client.at(uri, 3, 12))).toMatchObject({ uri: at('gear.rig'), range: range(1, 6, 11) });
    texts.set('gear.rig', trunk('4 t'));
    changed('gear.rig', 2);
    expect(await client.request('textDocument/definition', client.at(uri, 3, 12))).toMatchObject({ range: range(0, 6, 11) });
  }
  // A folder that goes takes its files along.
  const first = await client.request<{ items: { uri: string; resultId: string }[] }>('workspace/diagnostic', { previousResultIds: [] });
  expect(first.items.map((i) => i.uri)).toContain(at('other.rig'));
  texts.delete('other.rig');
  const held = client.request<{ items: { uri: string; items: unknown[] }[] }>('workspace/diagnostic', { previousResultIds: first.items.map(({ uri: value, resultId }) => ({ uri: value, value: resultId })) });
  changed('other.rig', 3);
  expect((await held).items).toContainEqual(expect.objectContaining({ uri: at('other.rig'), items: [] }));
});

test('on another day what was judged before is let go, and files are judged on the new one', async () => {
  const settings = { check: { asOf: '2026-06-22' } };
  client = new Client(textFolder(folder, new Map()), { 'workspace/configuration': () => [settings] });
  await client.start({ textDocument: { diagnostic: {} }, workspace: { configuration: true, diagnostics: { refreshSupport: true } } }, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
  client.open(uri, main.replace('}\n', '  2026-04-02  fitted\n}\n'));
  expect(codes((await client.pull(uri)).items)).not.toContain('inspection-overdue');
  settings.check.asOf = '2028-06-22';
  client.notify('workspace/didChangeConfiguration', { settings: null });
  expect(codes((await client.pull(uri)).items)).toContain('inspection-overdue');
  settings.check.asOf = '2026-06-22';
  client.notify('workspace/didChangeConfiguration', { settings: null });
  expect(codes((await client.pull(uri)).items)).not.toContain('inspection-overdue');
});

test('a rename of several files says what it is for, to a client that shows such words', async () => {
  const texts = new Map([['gear.rig', trunk('4 t')]]);
  await started(texts, { ...pulling, workspace: { configuration: true, workspaceEdit: { documentChanges: true, changeAnnotationSupport: {} } } });
  client.open(uri, 'use "gear.rig"\n\nkit bag {\n  carries  trunk\n}\n');
  interface Edit { readonly changeAnnotations?: object; readonly documentChanges: readonly { readonly edits: readonly { readonly annotationId?: string }[] }[] }
  const both = await client.request<Edit>('textDocument/rename', { ...client.at(uri, 3, 12), newName: 'tree-strap' });
  expect(both.changeAnnotations).toEqual({ linewright: { label: 'Rename to tree-strap', needsConfirmation: false } });
  expect(both.documentChanges.flatMap((c) => c.edits.map((e) => e.annotationId))).toEqual(['linewright', 'linewright']);
  const one = await client.request<Edit>('textDocument/rename', { ...client.at(uri, 2, 5), newName: 'box' });
  expect(one.changeAnnotations).toBeUndefined();
});

test('lenses stand above lines and pulls when they are wanted', async () => {
  const settings = { check: { asOf: '2026-06-22' }, codeLens: { enabled: false } };
  client = new Client(textFolder(folder, new Map()), { 'workspace/configuration': () => [settings] });
  await client.start(pulling, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
  client.open(uri, main);
  expect(await client.request('textDocument/codeLens', { textDocument: { uri } })).toEqual([]);
  settings.codeLens.enabled = true;
  client.notify('workspace/didChangeConfiguration', { settings: null });
  expect(await client.request('textDocument/codeLens', { textDocument: { uri } })).toEqual([{ range: range(0, 5, 9), command: { title: expect.stringMatching(/\d kN/), command: '' } }]);
});

test('a client that asks for findings is told the same way, and asked to ask again when the typing rests', async () => {
  await started(new Map(), { ...pulling, workspace: { configuration: true, diagnostics: { refreshSupport: true } } });
  client.open(uri, main);
  const asked = async (): Promise<string[]> => codes((await client.request<{ items?: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } })).items);
  await asked();
  client.change(uri, 2, { range: range(2, 2, 9), text: 'strnds' });
  expect(await asked()).not.toContain('unknown-statement');
  await client.message('workspace/diagnostic/refresh', () => true);
  expect(await asked()).toContain('unknown-statement');
  client.change(uri, 3, { range: range(2, 2, 8), text: 'strands' });
  expect(await asked()).not.toContain('unknown-statement');
});
