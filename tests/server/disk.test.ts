import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../server/cli/run.ts';
import { diskFiles } from '../../server/language-server/disk-files.ts';
import { Client, pulling, type Diagnostic } from './client.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));

let folder: string;
let client: Client | undefined;
beforeEach(() => void (folder = mkdtempSync(join(tmpdir(), 'linewright-server-'))));
afterEach(() => {
  client?.dispose();
  rmSync(folder, { recursive: true, force: true });
});

async function started(root: string): Promise<Client> {
  client = new Client(diskFiles);
  await client.start(pulling, { workspaceFolders: [{ uri: pathToFileURL(root).href, name: 'rigs' }] });
  return client;
}
const codes = (diagnostics: readonly Diagnostic[] | undefined): string[] => (diagnostics ?? []).map((d) => d.code);

interface Said {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly why?: string;
  readonly help?: string;
  readonly source?: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
}
const wholeText = (f: Said): string => [f.message, ...(['why', 'help', 'source'] as const).flatMap((part) => (f[part] === undefined ? [] : [`${part}: ${f[part]}`]))].join('\n');
const severities = ['', 'error', 'warning', 'information', 'hint'];

test('editor and command line say the same of every example, in the same order', async () => {
  let printed = '';
  const code = await run(['check', examples, '--on', '2026-06-22', '--format', 'json'], {
    cwd: examples, out: (text) => void (printed += text), err: () => undefined, today: () => '2026-06-22', styled: false, width: undefined,
  });
  expect(code).toBe(1);
  const { findings, files } = JSON.parse(printed) as { findings: Said[]; files: string[] };
  const names = readdirSync(examples).filter((n) => n.endsWith('.rig')).sort();
  expect(files.length).toBe(names.length);
  const server = await started(examples);
  const said: string[] = [];
  for (const name of names) {
    const uri = pathToFileURL(join(examples, name)).href;
    server.open(uri, readFileSync(join(examples, name), 'utf8'));
    const { items } = await server.pull(uri);
    for (const d of items!) said.push(`${name}:${d.range.start.line + 1}:${d.range.start.character + 1} ${severities[d.severity]} ${d.code} ${d.message}`);
  }
  expect(said.length).toBeGreaterThan(5);
  expect(said).toEqual(findings.map((f) => `${f.file}:${f.line}:${f.column} ${f.severity} ${f.code} ${wholeText(f)}`));
});

test('a folder is read with its folders, without what is hidden or installed', async () => {
  for (const path of ['a.rig', 'deep/er/b.rig', '.hidden/c.rig', 'node_modules/x/d.rig', 'notes.txt']) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), '');
  }
  expect(await diskFiles(pathToFileURL(folder).href)!.list('rigs')).toEqual({ paths: ['a.rig', 'deep/er/b.rig'], isCut: false });
});

test('a link does not lead out of the folder', async () => {
  const outside = mkdtempSync(join(tmpdir(), 'linewright-outside-'));
  writeFileSync(join(outside, 'secret.rig'), 'strap trunk {\n}\n');
  symlinkSync(join(outside, 'secret.rig'), join(folder, 'link.rig'));
  const files = diskFiles(pathToFileURL(folder).href)!;
  expect(await files.read('link.rig')).toEqual({ absent: 'outside' });
  const server = await started(folder);
  const uri = pathToFileURL(join(folder, 'a.rig')).href;
  server.open(uri, 'use "link.rig"\n');
  expect(codes((await server.pull(uri)).items)).toEqual(['use-outside']);
  rmSync(outside, { recursive: true });
});

test('a folder with more files than are read says so', async () => {
  for (const path of ['a/one.rig', 'b/two.rig', 'b/notes.md', 'c/three.rig']) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), '');
  }
  const uri = pathToFileURL(folder).href;
  expect(await diskFiles(uri, 2)!.list('rigs')).toMatchObject({ paths: { length: 2 }, isCut: true });
  expect(await diskFiles(uri, 4)!.list('rigs')).toMatchObject({ paths: { length: 3 }, isCut: false });
  expect(await diskFiles(uri)!.list('documents')).toEqual({ paths: ['b/notes.md'], isCut: false });
});

test('what is no text, a folder or not there is told apart', async () => {
  writeFileSync(join(folder, 'binary.rig'), Buffer.from([0xff, 0xfe, 0x00, 0xd8]));
  mkdirSync(join(folder, 'folder.rig'));
  const files = diskFiles(pathToFileURL(folder).href)!;
  expect([await files.read('binary.rig'), await files.read('folder.rig'), await files.read('none.rig')]).toEqual([{ absent: 'not-text' }, { absent: 'a-folder' }, { absent: 'missing' }]);
});

test('a folder that is on no disk has no files', () => {
  expect(diskFiles('vscode-vfs://github/rigs')).toBeUndefined();
  expect(diskFiles(pathToFileURL(join(folder, 'gone')).href)).toBeUndefined();
});

test('a folder that comes brings its files, to who uses them and to the workspace', async () => {
  const server = await started(folder);
  const uri = pathToFileURL(join(folder, 'x.rig')).href;
  server.open(uri, 'use "sub/p.rig"\n');
  expect(codes((await server.pull(uri)).items)).toEqual(['use-missing']);
  expect(await server.request('linewright/checkWorkspace')).toMatchObject({ files: 1 });
  mkdirSync(join(folder, 'sub'));
  for (const name of ['p.rig', 'q.rig', 'notes.txt']) writeFileSync(join(folder, 'sub', name), '');
  const came = (path: string): void => server.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: pathToFileURL(join(folder, path)).href, type: 1 }] });
  came('sub/notes.txt');
  expect(codes((await server.pull(uri)).items)).toEqual(['use-missing']);
  came('sub');
  expect((await server.pull(uri)).items).toEqual([]);
  expect(await server.request('linewright/checkWorkspace')).toMatchObject({ files: 3 });
});

test('a thousand files that use one another are read', async () => {
  for (let i = 1; i <= 1000; i++) writeFileSync(join(folder, `r${i}.rig`), i < 1000 ? `use "r${i + 1}.rig"\n` : 'strap trunk {\n  wll  4 t\n}\n');
  const server = await started(folder);
  const uri = pathToFileURL(join(folder, 'start.rig')).href;
  server.open(uri, 'use "r1.rig"\n\nkit bag {\n  carries  trunk\n}\n');
  expect(codes((await server.pull(uri)).items)).not.toContain('unknown-name');
  expect(await server.request('textDocument/definition', server.at(uri, 3, 12))).toMatchObject({ uri: pathToFileURL(join(folder, 'r1000.rig')).href });
});
