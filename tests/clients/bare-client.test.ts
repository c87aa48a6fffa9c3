import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { buildBundles } from '../../esbuild.config.mjs';
import { expected } from './expected.ts';
import { startPeer, type Peer } from './support/start-peer.ts';

const path = (file: string): string => fileURLToPath(new URL(`../../${file}`, import.meta.url));
const uri = new URL(`../../examples/${expected.rig}`, import.meta.url).href;
const text = readFileSync(path(`examples/${expected.rig}`), 'utf8');
const lines = text.split('\n');

interface Diagnostic {
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
  readonly code?: string;
  readonly message: string;
}
interface Published {
  readonly uri: string;
  readonly diagnostics: readonly Diagnostic[];
}

let peer: Peer;

beforeAll(() => buildBundles(['server']));
afterEach(() => peer.kill());

/** Starts the shipped server as an editor would; `capabilities` is all that the editor says of itself. */
async function open(capabilities: unknown): Promise<{ capabilities: Record<string, unknown> }> {
  peer = startPeer(process.execPath, [path('dist/server.cjs'), '--stdio'], {
    'workspace/configuration': ({ items }: { items: readonly unknown[] }) => items.map(() => ({ check: { asOf: expected.asOf } })),
    'client/registerCapability': () => null,
    'window/workDoneProgress/create': () => null,
  });
  const answer = await peer.request<{ capabilities: Record<string, unknown> }>('initialize', { processId: process.pid, rootUri: new URL('.', uri).href, capabilities });
  peer.notify('initialized', {});
  peer.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'rig', version: 1, text } });
  return answer;
}

const isFinding = ({ code, message }: Diagnostic): boolean => code === expected.finding.code && expected.finding.message.test(message);
const published = (test: (diagnostics: readonly Diagnostic[]) => boolean): Promise<Published> =>
  peer.notification<Published>('textDocument/publishDiagnostics', (params) => params.uri === uri && test(params.diagnostics));

const hoverAt = (line: number, character: number): Promise<unknown> => peer.request('textDocument/hover', { textDocument: { uri }, position: { line, character } });
const hoverLine = lines.findIndex((line) => expected.hover.line.test(line));

test('a client that supports nothing optional is sent the findings and may ask for the numbers', async () => {
  await open({});
  const { diagnostics } = await published((all) => all.some(isFinding));
  expect(lines[diagnostics.find(isFinding)!.range.start.line]).toMatch(expected.finding.under);
  expect(JSON.stringify(await hoverAt(hoverLine, lines[hoverLine]!.indexOf(expected.hover.word)))).toMatch(expected.hover.answer);
  await peer.request('shutdown');
  peer.notify('exit');
  expect(await peer.ended).toBe(0);
});

test('a client that pulls gets the findings as answers and none are sent besides', async () => {
  const { capabilities } = await open({ textDocument: { diagnostic: { dynamicRegistration: false } } });
  expect(capabilities['diagnosticProvider']).toBeTypeOf('object');
  const answer = await peer.request<{ kind: string; items: readonly Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } });
  expect(answer.kind).toBe('full');
  expect(answer.items.some(isFinding)).toBe(true);
  expect(peer.received.filter(({ method }) => method === 'textDocument/publishDiagnostics')).toEqual([]);
});

test('an edit of a few characters clears the finding that it mends', async () => {
  await open({});
  const { diagnostics } = await published((all) => all.some(isFinding));
  const { line } = diagnostics.find(isFinding)!.range.start;
  const short = /bury +(\d+(?:\.\d+)? +\w+)/d.exec(lines[line]!)!;
  const [start, end] = short.indices![1]!;
  peer.notify('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ range: { start: { line, character: start }, end: { line, character: end } }, text: '100 d' }],
  });
  const after = await published((all) => !all.some((finding) => isFinding(finding) && finding.range.start.line === line));
  expect(after.diagnostics.filter(isFinding)).toHaveLength(diagnostics.filter(isFinding).length - 1);
});

test.each(['Length: 2\r\n\r\n{}', 'Content-Length: x\r\n\r\n{}', 'Content-Length: -5\r\n\r\n{}', 'Content-Length: -1\r\n\r\n{}'])('a message whose length nobody can tell ends the server: %j', async (message) => {
  await open({});
  peer.write(message);
  peer.notify('rig/unknown');
  expect(await peer.ended).toBe(1);
});

test('requests that make no sense are answered, and the server stays alive', async () => {
  await open({});
  await expect(peer.request('rig/unknown')).rejects.toMatchObject({ code: -32601 });
  await expect(peer.request('textDocument/hover', { textDocument: { uri: `${uri}.missing` }, position: { line: 0, character: 0 } })).resolves.toBeNull();
  await expect(hoverAt(1_000_000, 1_000_000)).resolves.toBeNull();
  await expect(hoverAt(0, 1_000_000)).resolves.toBeDefined();
  peer.notify('rig/unknown', { anything: true });
  peer.notify('textDocument/didClose', { textDocument: { uri: `${uri}.missing` } });
  expect(JSON.stringify(await hoverAt(hoverLine, lines[hoverLine]!.indexOf(expected.hover.word)))).toMatch(expected.hover.answer);
});
