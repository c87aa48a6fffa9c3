import { afterEach, expect, test } from 'vitest';
import { Client, pulling, textFolder, type Diagnostic, type Range } from './client.ts';

const folder = 'file:///rigs';
const uri = `${folder}/plover.rig`;
const text = `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 46 d taper 24 d
}

winch bow-winch {
  rated    42 kN
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
`;

let client: Client;
afterEach(() => client.dispose());

const range = (line: number, from: number, to: number): Range => ({ start: { line, character: from }, end: { line, character: to } });
const codes = (diagnostics: readonly Diagnostic[] | undefined): string[] => (diagnostics ?? []).map((d) => d.code);

async function started(capabilities: unknown = pulling, more: Record<string, unknown> = {}): Promise<Client> {
  client = new Client();
  await client.start(capabilities, more);
  return client;
}

test('what the server can do is said once, and findings are asked for only by clients that ask', async () => {
  const answer = await (client = new Client()).start(pulling);
  // What keeps notebooks in step is not shipped with the client (esbuild.config.mjs).
  expect(answer.capabilities).not.toHaveProperty('notebookDocumentSync');
  expect(answer.capabilities).toMatchObject({ positionEncoding: 'utf-16', hoverProvider: true, diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true } });
  client.dispose();
  client = new Client();
  expect((await client.start({})).capabilities['diagnosticProvider']).toBeUndefined();
});

test('pulled findings have a result that stays the same while they do', async () => {
  await started();
  client.open(uri, text);
  const first = await client.pull(uri);
  expect(first.kind).toBe('full');
  expect(codes(first.items)).toContain('bury-too-short');
  expect(await client.pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
  client.change(uri, 2, { range: range(7, 34, 36), text: '72' });
  const after = await client.pull(uri, first.resultId);
  expect(after.kind).toBe('full');
  expect(codes(after.items)).not.toContain('bury-too-short');
  expect(client.received.filter((m) => m.method === 'textDocument/publishDiagnostics')).toEqual([]);
});

test('a finding: first line alone, then why, help and source; where it stands; what fed it', async () => {
  await started({ textDocument: { diagnostic: {}, publishDiagnostics: { relatedInformation: true } }, workspace: { configuration: true } });
  client.open(uri, text);
  const finding = (await client.pull(uri)).items!.find((d) => d.code === 'bury-too-short')!;
  expect(finding.message.split('\n')[0]).toMatch(/^bury of `main` outboard eye is 46 d, below the 72 d/);
  expect(finding.message.split('\n').slice(1).map((l) => l.split(':')[0])).toEqual(['why', 'help', 'source']);
  expect(finding).toMatchObject({ source: 'linewright', severity: 1, range: range(7, 34, 38) });
  expect(finding.relatedInformation!.map((r) => r.location.uri)).toContain(uri);
});

test('a client that cannot ask is sent findings, with nothing said twice', async () => {
  await started({});
  client.open(uri, text);
  expect(codes(await client.published(uri))).toContain('bury-too-short');
  client.change(uri, 2, { range: range(7, 34, 36), text: '72' });
  await client.published(uri, (d) => !codes(d).includes('bury-too-short'));
  client.notify('textDocument/didClose', { textDocument: { uri } });
  expect(await client.published(uri, (d) => d.length === 0)).toEqual([]);
});

test('hover, definition, symbols, completion, formatting', async () => {
  await started();
  client.open(uri, text);
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).toMatchObject({ contents: { kind: 'markdown', value: expect.stringContaining('42 kN on layer 1') }, range: range(16, 2, 9) });
  expect(await client.request('textDocument/definition', client.at(uri, 16, 12))).toEqual({ uri, range: range(0, 5, 9) });
  expect(await client.request('textDocument/references', { ...client.at(uri, 0, 6), context: { includeDeclaration: false } })).toEqual([{ uri, range: range(16, 11, 15) }]);
  const symbols = await client.request<{ name: string }[]>('textDocument/documentSymbol', { textDocument: { uri } });
  expect(symbols.map((s) => s.name)).toEqual(['main', 'inboard', 'outboard', 'bow-winch']);
  client.change(uri, 2, { range: range(17, 0, 0), text: '  fairlead  \n' });
  const list = await client.request<{ items: { label: string; textEdit: unknown }[] }>('textDocument/completion', client.at(uri, 17, 12));
  expect(list.items.map((i) => i.label)).toEqual(['hawse', 'roller']);
  expect(list.items[0]!.textEdit).toEqual({ newText: 'hawse', range: range(17, 12, 12) });
  const edits = await client.request<{ newText: string }[]>('textDocument/formatting', { textDocument: { uri }, options: {} });
  expect(edits.length).toBeGreaterThan(0);
});

test('documentation of an item comes when it is asked for', async () => {
  await started();
  client.open(uri, 'wi');
  const { items } = await client.request<{ items: { label: string; documentation?: unknown }[] }>('textDocument/completion', client.at(uri, 0, 2));
  const winch = items.find((i) => i.label === 'winch')!;
  expect(winch.documentation).toBeUndefined();
  expect(await client.request('completionItem/resolve', winch)).toMatchObject({ documentation: { value: expect.stringContaining('A winch and its drum') } });
  expect(await client.request('completionItem/resolve', { label: 'of nothing' })).toEqual({ label: 'of nothing' });
});

test('snippets and insert ranges only for clients that know them', async () => {
  await started({ ...pulling, textDocument: { completion: { completionItem: { snippetSupport: true, insertReplaceSupport: true } } } });
  client.open(uri, 'winch');
  const { items } = await client.request<{ items: { label: string; textEdit: { newText: string; insert: Range; replace: Range } }[] }>('textDocument/completion', client.at(uri, 0, 2));
  const { textEdit } = items.find((i) => i.label === 'winch')!;
  expect(textEdit.newText).toContain('${1:name}');
  expect([textEdit.insert, textEdit.replace]).toEqual([range(0, 0, 2), range(0, 0, 5)]);
});

test('rename gives edits, or says why not', async () => {
  await started();
  client.open(uri, text);
  expect(await client.request('textDocument/prepareRename', client.at(uri, 0, 6))).toEqual({ range: range(0, 5, 9), placeholder: 'main' });
  expect(await client.request('textDocument/rename', { ...client.at(uri, 0, 6), newName: 'blue' })).toEqual({ changes: { [uri]: [{ range: range(0, 5, 9), newText: 'blue' }, { range: range(16, 11, 15), newText: 'blue' }] } });
  await expect(client.request('textDocument/rename', { ...client.at(uri, 0, 6), newName: 'bow-winch' })).rejects.toThrow('`bow-winch` is the name of a winch already');
  expect(await client.request('textDocument/prepareRename', client.at(uri, 1, 4))).toBeNull();
});

test('quick fixes are edits of the kinds that are asked for', async () => {
  await started({ ...pulling, textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } });
  client.open(uri, text.replace('HMPE', 'HMPEE'));
  const ask = (only?: string[]): Promise<{ title: string; kind: string }[]> => client.request('textDocument/codeAction', { textDocument: { uri }, range: range(1, 12, 12), context: { diagnostics: [], ...(only === undefined ? {} : { only }) } });
  expect((await ask()).map((a) => [a.title, a.kind])).toEqual([['Write `HMPE`', 'quickfix']]);
  expect((await ask(['source.fixAll'])).map((a) => a.kind)).toEqual(['source.fixAll.linewright']);
  expect(await ask(['refactor'])).toEqual([]);
});

test('each action is of its own kind, and kinds take in those below them', async () => {
  await started({ ...pulling, textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } });
  client.open(uri, text);
  const ask = async (only?: string[]): Promise<string[]> => (await client.request<{ kind: string }[]>('textDocument/codeAction', { textDocument: { uri }, range: range(7, 34, 38), context: { diagnostics: [], ...(only === undefined ? {} : { only }) } })).map((a) => a.kind);
  client.change(uri, 2, { range: range(7, 34, 38), text: '46 cm' }, { range: range(16, 15, 15), text: '\n}\n\nrepair r on main {\n  splice  outboard eye bury 46 cm' });
  const line = 20;
  const at = async (only?: string[]): Promise<string[]> => (await client.request<{ kind: string }[]>('textDocument/codeAction', { textDocument: { uri }, range: range(line, 28, 28), context: { diagnostics: [], ...(only === undefined ? {} : { only }) } })).map((a) => a.kind);
  expect(new Set(await at())).toEqual(new Set(['quickfix', 'refactor.rewrite']));
  expect(new Set(await at(['quickfix']))).toEqual(new Set(['quickfix']));
  for (const kind of ['refactor', 'refactor.rewrite']) expect(new Set(await at([kind]))).toEqual(new Set(['refactor.rewrite']));
  expect(await at([''])).toEqual(await at());
  expect(await at(['refactor.rewrite.more'])).toEqual([]);
  expect(await ask(['source.organizeImports'])).toEqual([]);
});

test.each([[true, ['drum width of `bow-winch` is not given: add `width`']], [false, []]])('what cannot be done is told with its reason, where a client shows it: %s', async (disabledSupport, reasons) => {
  await started({ ...pulling, textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } }, disabledSupport } } });
  client.open(uri, text.replace('taper 24 d\n', 'taper 24 d\n  2026-06-21  damage  cut 2 strands at 8.4 m from inboard\n').replace('  width    230 mm\n', ''));
  const actions = await client.request<{ title: string; edit?: unknown; disabled?: { reason: string } }[]>('textDocument/codeAction', { textDocument: { uri }, range: range(8, 24, 24), context: { diagnostics: [] } });
  expect(actions.filter((a) => a.title.startsWith('Plan')).map((a) => a.disabled?.reason)).toEqual(reasons);
  for (const action of actions) expect(action.edit === undefined).toBe(action.disabled !== undefined);
});

test('semantic tokens in full, as a difference, and of a stretch', async () => {
  await started();
  client.open(uri, text);
  const full = await client.request<{ resultId: string; data: number[] }>('textDocument/semanticTokens/full', { textDocument: { uri } });
  expect(full.data.slice(0, 10)).toEqual([0, 0, 4, 0, 0, 0, 5, 4, 4, 1]);
  client.change(uri, 2, { range: range(4, 12, 14), text: '128' });
  const delta = await client.request<{ edits: { start: number; deleteCount: number; data: number[] }[] }>('textDocument/semanticTokens/full/delta', { textDocument: { uri }, previousResultId: full.resultId });
  expect(delta.edits.length).toBe(1);
  const { start, deleteCount, data } = delta.edits[0]!;
  const patched = [...full.data.slice(0, start), ...data, ...full.data.slice(start + deleteCount)];
  expect((await client.request<{ data: number[] }>('textDocument/semanticTokens/full', { textDocument: { uri } })).data).toEqual(patched);
  expect((await client.request<{ data: number[] }>('textDocument/semanticTokens/range', { textDocument: { uri }, range: range(0, 0, 9) })).data).toEqual(full.data.slice(0, 10));
});

test.each([['utf-8', 23], ['utf-16', 20], ['utf-32', 19]] as const)('positions in %s', async (encoding, end) => {
  client = new Client();
  const answer = await client.start({ ...pulling, general: { positionEncodings: [encoding] } });
  expect(answer.capabilities['positionEncoding']).toBe(encoding);
  const emoji = `${folder}/emoji.rig`;
  client.open(emoji, 'shackle bow "🛻 é" {\r\n  wlll\t4.7 t\r\n}\r\n');
  expect((await client.pull(emoji)).items!.map((d) => [d.code, d.range])).toContainEqual(['unknown-statement', range(1, 2, 6)]);
  // Behind the two letters that take more than one unit, the brace is taken away and put back.
  client.change(emoji, 2, { range: range(0, end - 1, end), text: '' });
  expect(codes((await client.pull(emoji)).items)).toContain('missing-block');
  client.change(emoji, 3, { range: range(0, end - 1, end - 1), text: '{' }, { range: range(1, 4, 5), text: '' });
  expect(codes((await client.pull(emoji)).items)).not.toContain('missing-block');
  expect(codes((await client.pull(emoji)).items)).not.toContain('unknown-statement');
  const tokens = await client.request<{ data: number[] }>('textDocument/semanticTokens/full', { textDocument: { uri: emoji } });
  // The third token is the label; its length counts in the same units.
  expect(tokens.data[12]).toBe(end - 14);
});

test('custom pages: sheet, rules, explanation, whole workspace', async () => {
  await started();
  client.open(uri, text);
  expect((await client.request<{ text: string }>('linewright/sheet', { uri })).text).toMatch(/Sheet of plover\.rig, judged as of 2026-06-22[\s\S]*\d kN/);
  const { rules } = await client.request<{ rules: { code: string }[] }>('linewright/rules', {});
  expect(rules.map((r) => r.code)).toContain('bury-too-short');
  expect((await client.request<{ markdown: string }>('linewright/explain', { code: 'bury-too-short' })).markdown).toMatch(/^# bury-too-short/);
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 1, errors: expect.any(Number) });
});

test('the path of the load is a hierarchy', async () => {
  await started();
  client.open(uri, text);
  const [item] = await client.request<{ name: string }[]>('textDocument/prepareCallHierarchy', client.at(uri, 0, 6));
  expect(item!.name).toBe('main');
  expect(await client.request('callHierarchy/incomingCalls', { item })).toMatchObject([{ from: { name: 'bow-winch', uri }, fromRanges: [range(16, 2, 15)] }]);
  expect(await client.request('callHierarchy/outgoingCalls', { item })).toEqual([]);
  expect(await client.request('callHierarchy/outgoingCalls', { item: 4 })).toEqual([]);
});

test('our own editor is shown the drum and the line, others are not', async () => {
  await started(pulling, { initializationOptions: { files: true } });
  client.open(uri, text);
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).toMatchObject({ contents: { value: expect.stringMatching(/!\[[^\]]+\]\(data:image\/svg\+xml;utf8,%3Csvg[^()\s]+\|width=600\)$/) } });
  client.dispose();
  await started();
  client.open(uri, text);
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).not.toMatchObject({ contents: { value: expect.stringContaining('data:') } });
});

test('what makes no sense is answered with nothing, and the server goes on', async () => {
  await started();
  client.open(uri, text);
  const nowhere = `${folder}/none.rig`;
  expect(await client.request('textDocument/hover', client.at(nowhere, 0, 0))).toBeNull();
  expect(await client.request('textDocument/hover', client.at(uri, 1_000_000, 0))).toBeNull();
  expect(await client.request('textDocument/hover', client.at(uri, -1, 0))).toBeNull();
  expect(await client.request('textDocument/hover', { textDocument: 5, position: 'x' })).toBeNull();
  expect(await client.request('textDocument/hover', {})).toBeNull();
  expect(await client.request('textDocument/completion', client.at(nowhere, 0, 0))).toBeNull();
  expect(await client.request('textDocument/documentSymbol', { textDocument: { uri: 'not an address' } })).toEqual([]);
  expect(await client.request('textDocument/formatting', { textDocument: { uri: nowhere } })).toEqual([]);
  expect(await client.request('textDocument/rename', { ...client.at(uri, 0, 6), newName: 7 })).toBeNull();
  expect(await client.request('textDocument/codeAction', { textDocument: { uri }, range: 'all' })).toEqual([]);
  expect(await client.request('textDocument/selectionRange', { textDocument: { uri }, positions: [{}] })).toBeNull();
  expect(await client.request('linewright/sheet', { uri: nowhere })).toHaveProperty('text');
  expect((await client.pull(nowhere)).items).toEqual([]);
  await expect(client.request('linewright/nothing', {})).rejects.toMatchObject({ code: -32601 });
  for (const method of ['didOpen', 'didChange', 'didClose']) client.notify(`textDocument/${method}`, { textDocument: 'x' });
  client.change(uri, 2, { range: range(900, 0, 5), text: '# the end\n' });
  client.notify('textDocument/didChange', { textDocument: { uri, version: 3 }, contentChanges: 'x' });
  client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 3 }, null] });
  client.notify('workspace/didChangeConfiguration', null);
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).not.toBeNull();
});

test('a message that is no message does not end the server', async () => {
  await started();
  client.open(uri, text);
  await client.settled();
  client.write('Content-Length: 9\r\n\r\n{"a": nul');
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).not.toBeNull();
});

test('a cancelled request is answered, and the next one too', async () => {
  await started();
  client.open(uri, text);
  client.notify('$/cancelRequest', { id: 12345 });
  const { CancellationTokenSource } = await import('vscode-jsonrpc/node');
  const source = new CancellationTokenSource();
  const hover = client.connection.sendRequest('textDocument/hover', client.at(uri, 16, 3), source.token).then(() => 'answered', () => 'answered');
  source.cancel();
  expect(await hover).toBe('answered');
  expect(await client.request('textDocument/hover', client.at(uri, 16, 3))).not.toBeNull();
});

test('the day comes from the settings of the folder', async () => {
  const settings = { check: { asOf: '2026-06-22' } };
  client = new Client(undefined, { 'workspace/configuration': () => [settings] });
  await client.start(pulling);
  const temporary = text.replace('}\n\nwinch', '  2026-06-01  cut     at 27 m from inboard\n  2026-06-01  splice  outboard eye thimble tube bury 72 d taper 24 d stitched temporary\n}\n\nwinch');
  client.open(uri, temporary);
  expect(codes((await client.pull(uri)).items)).not.toContain('temporary-splice-overdue');
  settings.check.asOf = '2026-09-01';
  client.notify('workspace/didChangeConfiguration', { settings: null });
  expect(codes((await client.pull(uri)).items)).toContain('temporary-splice-overdue');
});

test('the old side of a comparison has hovers and no findings', async () => {
  await started();
  const old = 'git:/rigs/plover.rig?%7B%22ref%22%3A%22HEAD%22%7D';
  client.open(old, text);
  client.open(uri, text.replace('46 d', '72 d'));
  expect((await client.pull(old)).items).toEqual([]);
  expect(await client.request('textDocument/hover', client.at(old, 7, 35))).toMatchObject({ contents: { value: expect.stringContaining('46 d') } });
  expect(await client.request('textDocument/hover', client.at(uri, 7, 35))).toMatchObject({ contents: { value: expect.stringContaining('72 d · needs') } });
});

test('an address means the same document however it is spelt', async () => {
  client = new Client(textFolder('file:///c%3A/my%20rigs', new Map()));
  await client.start(pulling, { workspaceFolders: [{ uri: 'file:///c%3A/my%20rigs', name: 'rigs' }] });
  client.open('file:///c%3A/my%20rigs/plover.rig', text);
  expect(await client.request('textDocument/hover', client.at('file:///C:/my rigs/plover.rig', 16, 3))).not.toBeNull();
});
