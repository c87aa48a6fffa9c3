import { afterEach, expect, test } from 'vitest';
import { Client, pulling, textFolder, type Diagnostic, type Range } from './client.ts';

const folder = 'file:///rigs';
const uri = `${folder}/build.md`;
const head = '# Lines of the Tarn Hut crew é 🛻\n\n';
const lineFence = '```rig\nline main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  outboard  eye thimble tube bury 46 d taper 24 d\n}\n```\n';
const winchFence = '```rig\nuse "practice.rig"\n\nwinch w {\n  rated    42 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  carries  main\n}\n```\n';
const text = `${head}${lineFence}\nmain is a name, and winch { is prose.\n\n${winchFence}\nThe end.\n`;

let client: Client;
afterEach(() => client.dispose());

async function started(capabilities: unknown = pulling): Promise<void> {
  client = new Client(textFolder(folder, new Map([['practice.rig', 'practice {\n  line-factor  2\n}\n'], ['notes.md', text]])));
  await client.start(capabilities, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
}
const open = (of = text, languageId = 'markdown', at = uri): void => client.notify('textDocument/didOpen', { textDocument: { uri: at, languageId, version: 1, text: of } });
const lineOf = (words: string, of = text): number => of.split('\n').findIndex((l) => l.includes(words));
const codes = (diagnostics: readonly Diagnostic[] | undefined): string[] => (diagnostics ?? []).map((d) => d.code);
const range = (line: number, from: number, to: number): Range => ({ start: { line, character: from }, end: { line, character: to } });

test('findings stand at their real lines, and the fences of a document know each other', async () => {
  await started();
  open();
  const { items } = await client.pull(uri);
  expect(items!.find((d) => d.code === 'bury-too-short')!.range).toEqual(range(lineOf('bury 46 d'), 34, 38));
  expect(codes(items)).not.toContain('unknown-name');
  expect(codes(items)).not.toContain('use-missing');
  const fenced = text.split('\n').flatMap((_, i) => (i > lineOf('```rig') && i < lineOf('main is a name') ? [i] : i > lineOf('use "') - 1 && i < lineOf('The end') ? [i] : []));
  for (const d of items!) expect(fenced).toContain(d.range.start.line);
});

test('hover, definition, rename and completion are answered inside the fences and nowhere else', async () => {
  await started();
  open();
  const carries = lineOf('carries');
  expect(await client.request('textDocument/hover', client.at(uri, carries, 3))).toMatchObject({ contents: { value: expect.stringContaining('42 kN') } });
  expect(await client.request('textDocument/definition', client.at(uri, carries, 12))).toMatchObject({ range: range(lineOf('line main'), 5, 9) });
  expect(await client.request('textDocument/rename', { ...client.at(uri, carries, 12), newName: 'blue' })).toEqual({ changes: { [uri]: [{ range: range(lineOf('line main'), 5, 9), newText: 'blue' }, { range: range(carries, 11, 15), newText: 'blue' }] } });
  expect((await client.request<{ items: unknown[] }>('textDocument/completion', client.at(uri, lineOf('line main') + 8, 0))).items.length).toBeGreaterThan(0);
  for (const [words, column] of [['main is a name', 2], ['# Lines', 4], ['The end', 0]] as const) {
    const at = client.at(uri, lineOf(words), column);
    for (const method of ['hover', 'completion', 'definition', 'prepareRename', 'signatureHelp', 'prepareCallHierarchy']) expect(await client.request(`textDocument/${method}`, at)).toBeNull();
    expect(await client.request('textDocument/documentHighlight', at)).toEqual([]);
    expect(await client.request('textDocument/selectionRange', { textDocument: { uri }, positions: [at.position] })).toEqual([{ range: { start: at.position, end: at.position } }]);
  }
});

test.each([['utf-8', 7], ['utf-16', 4], ['utf-32', 3]] as const)('typing in the prose in %s is taken where it is meant', async (encoding, end) => {
  await started({ ...pulling, general: { positionEncodings: [encoding] } });
  // Words in front of a fence make it prose; they are taken away behind letters of more than one unit, and a line is put in above.
  open(text.replace('```rig', 'é🛻x```rig'));
  expect(codes((await client.pull(uri)).items)).not.toContain('bury-too-short');
  client.change(uri, 2, { range: range(lineOf('```rig'), 0, end), text: '' }, { range: range(0, 0, 1), text: '\n#' });
  const { items } = await client.pull(uri);
  expect(items!.find((d) => d.code === 'bury-too-short')!.range).toEqual(range(lineOf('bury 46 d') + 1, 34, 38));
  client.change(uri, 3, { range: range(lineOf('bury 46 d') + 1, 34, 36), text: '72' });
  expect(codes((await client.pull(uri)).items)).not.toContain('bury-too-short');
  // A fence that is no rig any more takes its findings along, and the names with it.
  client.change(uri, 4, { range: range(lineOf('```rig') + 1, 3, 6), text: 'txt' });
  expect(codes((await client.pull(uri)).items)).toContain('unknown-name');
});

test('a document is not laid out, and has no formatter where that can be said', async () => {
  await started();
  open(text.replace('  strands   12', ' strands 12'));
  for (const method of ['formatting', 'rangeFormatting', 'onTypeFormatting']) {
    expect(await client.request(`textDocument/${method}`, { textDocument: { uri }, range: range(0, 0, 20), position: { line: lineOf('strands') + 1, character: 0 }, ch: '\n', options: {} })).toEqual([]);
  }
  client.dispose();
  const dynamic = { dynamicRegistration: true };
  client = new Client();
  const { capabilities } = await client.start({ textDocument: { formatting: dynamic, rangeFormatting: dynamic, onTypeFormatting: dynamic } });
  expect(capabilities).not.toHaveProperty('documentFormattingProvider');
  const { registrations } = await client.message<{ registrations: { method: string; registerOptions: { documentSelector?: unknown } }[] }>('client/registerCapability');
  expect(registrations.filter((r) => r.method.includes('ormatting')).map((r) => r.registerOptions.documentSelector)).toEqual([[{ language: 'rig' }], [{ language: 'rig' }], [{ language: 'rig' }]]);
});

test('a fix in a quotation stays in it', async () => {
  await started({ ...pulling, textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } });
  const rig = (lineFence + winchFence).replace('  breaking  92 kN\n', '').replace('```\n```rig\nuse "practice.rig"\n', '');
  const quoted = rig.replace(/^/gm, '> ').replace(/> $/, '');
  open(quoted);
  const line = lineOf('line main', quoted);
  const actions = await client.request<{ title: string; edit: { changes: Record<string, { newText: string }[]> } }[]>('textDocument/codeAction', { textDocument: { uri }, range: range(line, 8, 8), context: { diagnostics: [] } });
  const stub = actions.find((a) => a.title.startsWith('Add `'));
  expect(stub?.edit.changes[uri]![0]!.newText).toMatch(/^\n> {3}\w/);
});

test('a document that is closed leaves nothing behind, and one that is not open is not looked into', async () => {
  await started();
  open();
  await client.pull(uri);
  const report = (): Promise<{ items: { uri: string }[] }> => client.request('workspace/symbol', { query: 'main' }).then((items) => ({ items: (items as { location: { uri: string } }[]).map((i) => ({ uri: i.location.uri })) }));
  expect((await report()).items.map((i) => i.uri)).toEqual([uri]);
  client.notify('textDocument/didClose', { textDocument: { uri } });
  await client.settled();
  expect((await report()).items).toEqual([]);
  expect((await client.pull(`${folder}/notes.md`)).items).toEqual([]);
});

test('the language may be said where the name does not', async () => {
  await started();
  open(text, 'markdown', 'untitled:Untitled-1');
  expect(codes((await client.pull('untitled:Untitled-1')).items)).toContain('bury-too-short');
});

test('the preview is made of an open document, of one that is not, and of a text that is none', async () => {
  await started();
  open();
  const preview = (params: object): Promise<{ fences: string[] }> => client.request('linewright/fences', params);
  const { fences } = await preview({ uri, text });
  expect(fences.length).toBe(2);
  expect(fences[0]).toContain('bury of <code>main</code> outboard eye is 46 d');
  // The shop's factor of two comes from the file that the second fence uses.
  expect((await preview({ uri: `${folder}/other.md`, text })).fences).toEqual(fences);
  expect((await preview({ text })).fences[1]).toContain('use-missing');
  expect((await preview({})).fences).toEqual([]);
  expect((await client.request<unknown[]>('workspace/symbol', { query: 'w' })).length).toBeGreaterThan(0);
  expect((await client.pull(`${folder}/other.md`)).items).toEqual([]);
});
