import { afterEach, expect, test } from 'vitest';
import { Client, pulling, textFolder, type Diagnostic } from './client.ts';

const folder = 'file:///rigs';
const rig = 'use "practice.rig"\n\nwinch w {\n  rated    40 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  carries  main\n}\n\nline main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d stitched\n}\n';
const practice = 'practice {\n  line-factor  2\n}\n';

let client: Client;
afterEach(() => client.dispose());

const codes = (diagnostics: readonly Diagnostic[] | undefined): string[] => (diagnostics ?? []).map((d) => d.code);
const at = (path: string): string => `${folder}/${path}`;

async function started(texts: Map<string, string>, capabilities: unknown = pulling, reads: string[] = []): Promise<void> {
  client = new Client(textFolder(folder, texts, reads));
  await client.start(capabilities, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
}

test('used files are read, and their practice counts', async () => {
  await started(new Map([['practice.rig', practice]]));
  client.open(at('plover.rig'), rig);
  expect(codes((await client.pull(at('plover.rig'))).items)).not.toContain('use-missing');
  const without = rig.replace('use "practice.rig"', '');
  client.change(at('plover.rig'), 2, { text: without });
  const factor = (d: Diagnostic): boolean => d.code === 'line-factor-too-low';
  expect((await client.pull(at('plover.rig'))).items!.some(factor)).toBe(true);
  client.change(at('plover.rig'), 3, { text: rig });
  expect((await client.pull(at('plover.rig'))).items!.some(factor)).toBe(false);
});

test('a used file that comes, changes and goes is judged again each time', async () => {
  const texts = new Map<string, string>();
  await started(texts);
  client.open(at('plover.rig'), rig);
  expect(codes((await client.pull(at('plover.rig'))).items)).toContain('use-missing');
  const changed = (type: number): void => client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: at('practice.rig'), type }] });
  texts.set('practice.rig', practice);
  changed(1);
  expect(codes((await client.pull(at('plover.rig'))).items)).not.toContain('use-missing');
  texts.set('practice.rig', practice.replace('2', '3'));
  changed(2);
  expect(codes((await client.pull(at('plover.rig'))).items)).toContain('line-factor-too-low');
  texts.delete('practice.rig');
  changed(3);
  expect(codes((await client.pull(at('plover.rig'))).items)).toContain('use-missing');
});

test('an open used file counts as it is typed, and as it is saved once it is closed', async () => {
  await started(new Map([['practice.rig', practice]]));
  client.open(at('plover.rig'), rig);
  client.open(at('practice.rig'), practice.replace('2', '3'));
  expect(codes((await client.pull(at('plover.rig'))).items)).toContain('line-factor-too-low');
  client.notify('textDocument/didClose', { textDocument: { uri: at('practice.rig') } });
  await client.settled();
  expect(codes((await client.pull(at('plover.rig'))).items)).not.toContain('line-factor-too-low');
});

test('definition and rename reach files that are not open', async () => {
  const gear = 'strap trunk {\n  wll  4 t\n}\n';
  await started(new Map([['gear.rig', gear], ['other.rig', 'use "gear.rig"\n\nkit bag {\n  carries  trunk\n}\n']]));
  client.open(at('plover.rig'), 'use "gear.rig"\n\nkit bag {\n  carries  trunk\n}\n');
  expect(await client.request('textDocument/definition', client.at(at('plover.rig'), 3, 12))).toMatchObject({ uri: at('gear.rig') });
  const edit = await client.request<{ changes: Record<string, unknown[]> }>('textDocument/rename', { ...client.at(at('plover.rig'), 3, 12), newName: 'tree-strap' });
  expect(Object.keys(edit.changes).sort()).toEqual([at('gear.rig'), at('other.rig'), at('plover.rig')]);
});

test('moving a file rewrites what leads to it', async () => {
  await started(new Map([['practice.rig', practice], ['other.rig', 'use "practice.rig"\n']]));
  client.open(at('plover.rig'), rig);
  const edit = await client.request<{ changes: Record<string, { newText: string }[]> }>('workspace/willRenameFiles', { files: [{ oldUri: at('practice.rig'), newUri: at('crew/practice.rig') }] });
  expect(edit.changes).toMatchObject({ [at('plover.rig')]: [{ newText: 'crew/practice.rig' }], [at('other.rig')]: [{ newText: 'crew/practice.rig' }] });
  expect(await client.request('workspace/willRenameFiles', { files: [{ oldUri: at('plover.rig'), newUri: at('x.rig') }] })).toBeNull();
  expect(await client.request('workspace/willRenameFiles', { files: 'x' })).toBeNull();
});

const strap = 'strap trunk {\n  wll  4 t\n}\n';
const bag = 'use "gear.rig"\n\nkit bag {\n  carries  trunk\n}\n';

/** Folders by their addresses, as the client names them. */
async function startedIn(folders: Readonly<Record<string, ReadonlyMap<string, string>>>): Promise<void> {
  client = new Client((uri) => (folders[uri] === undefined ? undefined : textFolder(uri, new Map(folders[uri]))(uri)));
  await client.start(pulling, { workspaceFolders: Object.keys(folders).map((uri) => ({ uri, name: uri })) });
}

test('files that move in several folders are followed in each of them', async () => {
  const texts = new Map([['p.rig', strap], ['x.rig', 'use "p.rig"\n']]);
  await startedIn({ 'file:///ra': texts, 'file:///rb': texts });
  const move = (of: string): unknown => ({ oldUri: `file:///${of}/p.rig`, newUri: `file:///${of}/q.rig` });
  expect(await client.request('workspace/willRenameFiles', { files: [move('ra'), null, move('rb')] })).toEqual({
    changes: Object.fromEntries(['ra', 'rb'].map((of) => [`file:///${of}/x.rig`, [{ range: { start: { line: 0, character: 5 }, end: { line: 0, character: 10 } }, newText: 'q.rig' }]])),
  });
});

test('documents that are not open follow a rename and a moved file, and count for nothing else', async () => {
  const document = `# The bag\n\n\`\`\`rig\n${bag}\`\`\`\n`;
  await started(new Map([['gear.rig', strap], ['bag.md', document], ['prose.md', 'use "gear.rig"\n']]));
  const uses = { changes: { [at('bag.md')]: [{ range: { start: { line: 3, character: 5 }, end: { line: 3, character: 13 } }, newText: 'new/gear.rig' }] } };
  expect(await client.request('workspace/willRenameFiles', { files: [{ oldUri: at('gear.rig'), newUri: at('new/gear.rig') }] })).toEqual(uses);
  client.open(at('gear.rig'), strap);
  const rename = (newName: string): Promise<{ changes: Record<string, unknown> }> => client.request('textDocument/rename', { ...client.at(at('gear.rig'), 0, 8), newName });
  expect((await rename('tree-strap')).changes[at('bag.md')]).toEqual([{ range: { start: { line: 6, character: 11 }, end: { line: 6, character: 16 } }, newText: 'tree-strap' }]);
  await expect(rename('bag')).rejects.toThrow('`bag` is the name of a kit already (bag.md:6)');
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 1 });
});

test('a repair that is written into the logbook is looked for in every rig and document', async () => {
  const rewriting = { ...pulling, textDocument: { ...pulling.textDocument, codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } };
  const line = rig.slice(rig.indexOf('line main'));
  await started(new Map([['far.rig', 'use "plover.rig"\n\nchain far after fix {\n  main outboard -> main inboard\n}\n'], ['far.md', '# Far\n\n```rig\nuse "plover.rig"\n\nchain farther after fix {\n  main outboard -> main inboard\n}\n```\n']]), rewriting);
  const text = `${line}\nrepair fix on main {\n  cut  at 20 m from inboard\n}\n`;
  client.open(at('plover.rig'), text);
  const start = { line: text.split('\n').findIndex((l) => l.startsWith('repair')), character: 8 };
  const actions = await client.request<{ title: string; edit?: { changes: object } }[]>('textDocument/codeAction', { textDocument: { uri: at('plover.rig') }, range: { start, end: start }, context: { diagnostics: [], only: ['refactor'] } });
  expect(actions.map((a) => Object.keys(a.edit!.changes).sort())).toEqual([[at('far.md'), at('far.rig'), at('plover.rig')]]);
  expect((actions[0]!.edit!.changes as Record<string, unknown>)[at('far.md')]).toEqual([{ range: { start: { line: 5, character: 13 }, end: { line: 5, character: 23 } }, newText: '' }]);
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 2 });
});

test('where not every file is read, a repair is not written into the logbook, and the reason is given', async () => {
  const rewriting = { ...pulling, textDocument: { ...pulling.textDocument, codeAction: { disabledSupport: true, codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } };
  client = new Client(textFolder(folder, new Map(), [], true));
  await client.start(rewriting, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
  const text = `${rig.slice(rig.indexOf('line main'))}\nrepair fix on main {\n  cut  at 20 m from inboard\n}\n`;
  client.open(at('plover.rig'), text);
  const start = { line: text.split('\n').findIndex((l) => l.startsWith('repair')), character: 8 };
  const actions = await client.request<{ edit?: unknown; disabled?: { reason: string } }[]>('textDocument/codeAction', { textDocument: { uri: at('plover.rig') }, range: { start, end: start }, context: { diagnostics: [], only: ['refactor'] } });
  expect(actions.map((a) => [a.edit, a.disabled?.reason])).toEqual([[undefined, 'this folder holds more files than are read, and those that are left out may speak of it']]);
});

test('where not every file is read, a rename is refused and the count says so', async () => {
  client = new Client(textFolder(folder, new Map([['gear.rig', strap]]), [], true));
  await client.start(pulling, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
  client.open(at('gear.rig'), strap);
  await expect(client.request('textDocument/rename', { ...client.at(at('gear.rig'), 0, 8), newName: 'b' })).rejects.toThrow('this folder holds more files than are read');
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 1, isCut: true });
  expect(await client.request('workspace/willRenameFiles', { files: [{ oldUri: at('gear.rig'), newUri: at('b.rig') }] })).toBeNull();
  expect(await client.message('window/showMessage')).toMatchObject({ message: expect.stringContaining('more files than are read') });
});

test.each(['file:///rigs/sub', 'file://localhost/rigs/sub/', 'file:///rigs//./sub'])('a folder in another one is a part of it: %s', async (inner) => {
  await startedIn({ 'file:///rigs': new Map([['x.rig', bag.replace('gear', 'sub/gear')], ['sub/gear.rig', strap]]), [inner]: new Map([['gear.rig', strap]]) });
  client.open(at('x.rig'), bag.replace('gear', 'sub/gear'));
  client.open(at('sub/gear.rig'), strap);
  client.change(at('sub/gear.rig'), 2, { text: strap.replace('trunk', 'tree') });
  expect(codes((await client.pull(at('x.rig'))).items)).toContain('unknown-name');
  client.change(at('sub/gear.rig'), 3, { text: strap });
  expect(codes((await client.pull(at('x.rig'))).items)).not.toContain('unknown-name');
  const renamed = async (): Promise<string[]> => Object.keys((await client.request<{ changes: object }>('textDocument/rename', { ...client.at(at('sub/gear.rig'), 0, 8), newName: 'b' })).changes).sort();
  expect(await renamed()).toEqual([at('sub/gear.rig'), at('x.rig')]);
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 2 });
  // Once the outer one is closed, the inner one stands for itself.
  client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [], removed: [{ uri: folder, name: 'rigs' }] } });
  expect(await renamed()).toEqual([at('sub/gear.rig')]);
});

test('the same folder named twice is one', async () => {
  await startedIn({ 'file:///rigs': new Map([['gear.rig', strap]]), 'file://localhost/rigs/': new Map([['gear.rig', strap]]) });
  client.open('file:///rigs/./gear.rig', strap);
  expect(await client.request('linewright/checkWorkspace', {})).toMatchObject({ files: 1 });
});

test('the workspace is told once, and then held until there is something new', async () => {
  const texts = new Map([['one.rig', 'winch w {\n  rated  42\n}\n'], ['two.rig', 'strap s {\n  wll  4 t\n}\n']]);
  await started(texts);
  interface Report { readonly items: readonly { readonly uri: string; readonly kind: string; readonly resultId: string; readonly items: readonly Diagnostic[] }[] }
  const first = await client.request<Report>('workspace/diagnostic', { previousResultIds: [] });
  const one = first.items.find((i) => i.uri === at('one.rig'))!;
  expect(codes(one.items)).toContain('bare-number');
  const previousResultIds = first.items.map(({ uri, resultId }) => ({ uri, value: resultId }));
  let answered = false;
  const next = client.request<Report>('workspace/diagnostic', { previousResultIds }).then((report) => {
    answered = true;
    return report;
  });
  await client.settled();
  await client.settled();
  expect(answered).toBe(false);
  texts.set('one.rig', 'winch w {\n  rated  42 kN\n}\n');
  client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: at('one.rig'), type: 2 }] });
  expect(codes((await next).items.find((i) => i.uri === at('one.rig'))!.items)).not.toContain('bare-number');
});

test('pushed findings stand in their own file', async () => {
  await started(new Map([['practice.rig', 'practice {\n  line-facter  2\n}\n']]), {});
  client.open(at('plover.rig'), rig);
  expect(codes(await client.published(at('practice.rig')))).toContain('unknown-statement');
  expect(codes(await client.published(at('plover.rig')))).not.toContain('unknown-statement');
});

test('nothing is read before a document is open', async () => {
  const reads: string[] = [];
  await started(new Map([['practice.rig', practice]]), pulling, reads);
  await client.settled();
  expect(reads).toEqual([]);
  client.open(at('plover.rig'), rig);
  await client.pull(at('plover.rig'));
  expect(reads).toContain('practice.rig');
});

test('without a disk, files come through the client', async () => {
  const asked: string[] = [];
  const memory = 'vscode-vfs://memory/rigs';
  client = new Client(undefined, {
    'workspace/configuration': () => [{ check: { asOf: '2026-06-22' } }],
    'linewright/findRigs': () => ({ uris: [`${memory}/practice.rig`, `${memory}/plover.rig`] }),
    'linewright/readFile': ({ uri }: { uri: string }) => {
      asked.push(uri);
      return uri.endsWith('practice.rig') ? { text: practice } : { problem: 'missing' };
    },
  });
  await client.start(pulling, { workspaceFolders: [{ uri: memory, name: 'rigs' }], initializationOptions: { files: true } });
  client.open(`${memory}/plover.rig`, rig);
  expect(codes((await client.pull(`${memory}/plover.rig`)).items)).not.toContain('use-missing');
  expect(asked).toContain(`${memory}/practice.rig`);
});

test('a document in no folder may use its neighbours and nothing above them', async () => {
  const reads: string[] = [];
  client = new Client(textFolder('file:///elsewhere', new Map([['practice.rig', practice]]), reads));
  await client.start(pulling);
  client.open('file:///elsewhere/plover.rig', `${rig}use "../above.rig"\n`);
  const { items } = await client.pull('file:///elsewhere/plover.rig');
  expect(codes(items)).toContain('use-outside');
  expect(codes(items)).not.toContain('use-missing');
  expect(reads).toEqual(['practice.rig']);
});

test('what is open below a document in no folder counts for it as it is typed, and as it is saved once it is closed', async () => {
  client = new Client(textFolder('file:///elsewhere', new Map([['sub/gear.rig', strap]])));
  await client.start(pulling);
  const [user, gear] = ['file:///elsewhere/bag.rig', 'file:///elsewhere/sub/gear.rig'];
  const isKnown = async (): Promise<boolean> => !codes((await client.pull(user)).items).includes('unknown-name');
  client.open(user, bag.replace('gear', 'sub/gear'));
  expect(await isKnown()).toBe(true);
  client.open(gear, strap.replace('trunk', 'tree'));
  expect(await isKnown()).toBe(false);
  client.change(gear, 2, { range: { start: { line: 0, character: 6 }, end: { line: 0, character: 10 } }, text: 'trunk' });
  expect(await isKnown()).toBe(true);
  client.change(gear, 3, { text: '' });
  client.notify('textDocument/didClose', { textDocument: { uri: user } });
  client.open(user, bag.replace('gear', 'sub/gear'));
  expect(await isKnown()).toBe(false);
  client.notify('textDocument/didClose', { textDocument: { uri: gear } });
  expect(await isKnown()).toBe(true);
});

test('an unsaved document is judged by itself', async () => {
  await started(new Map());
  client.open('untitled:Untitled-1', rig);
  expect(codes((await client.pull('untitled:Untitled-1')).items)).toContain('use-missing');
});

test('folders come and go while documents stay open', async () => {
  await started(new Map([['practice.rig', practice]]));
  client.open('file:///more/plover.rig', rig);
  expect(codes((await client.pull('file:///more/plover.rig')).items)).toContain('use-missing');
  client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: 'file:///more', name: 'more' }], removed: [{ uri: folder, name: 'rigs' }] } });
  expect((await client.pull('file:///more/plover.rig')).items!.length).toBeGreaterThan(0);
});
