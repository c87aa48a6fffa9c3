import { readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { join } from 'node:path';
import { languages } from '../bench/languages.ts';
import { BenchClient } from '../bench/bench-client.ts';
import { mutateText } from '../fuzz/mutate-text.ts';
import { randomFrom, rigText, rigTextDay } from '../support/rig-text.ts';

const program = join(import.meta.dirname, '../../dist/server.cjs');
const rootUri = 'file:///no-such-folder/soak';
const uriOf = (i: number): string => `${rootUri}/f${i}.rig`;
const sharedText = 'anchor larch {\n  kind     tree\n  girth    1.5 m\n  holding  48 kN "tested"\n}\n';

export interface SoakOptions {
  readonly steps: number;
  readonly files: number;
  readonly seed: number;
  /** Steps between two comparisons with a fresh server. */
  readonly compareEvery: number;
  /** The server is killed now and then, and another one goes on with the same texts. */
  readonly kills: boolean;
  readonly log?: (says: string) => void;
}

export interface SoakResult {
  readonly compared: number;
  readonly differences: readonly string[];
  /** Requests that the server refused as its own fault. */
  readonly faults: readonly string[];
  /** Memory in use now and then, in MB; NaN where the system does not tell. */
  readonly memory: readonly number[];
}

interface Position {
  readonly line: number;
  readonly character: number;
}

function positionIn(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/);
  // Between the halves of a line break there is no position: it is the end of its line.
  return { line: before.length - 1, character: before.at(-1)!.length };
}

function memoryOf(pid: number): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return NaN;
  }
}

async function startServer(): Promise<BenchClient> {
  // With this little memory a leak ends the server long before the last step.
  const client = new BenchClient({ name: 'linewright', command: [process.execPath, '--max-old-space-size=128', program, '--stdio'], language: languages.rig, pulls: true, rest_ms: 0, settings: { linewright: { check: { asOf: rigTextDay } } } });
  await client.initialize(rootUri);
  return client;
}

/** Edits and asks at random, and compares what the server says with what a fresh one says of the same texts. */
export async function soakServer({ steps, files, seed, compareEvery, kills, log = () => undefined }: SoakOptions): Promise<SoakResult> {
  const random = randomFrom(seed);
  const below = (n: number): number => Math.floor(random() * n);
  const original = (i: number): string => (i === 0 ? sharedText : rigText(80, i, i % 3 === 0 ? { prefix: `f${i}-` } : { prefix: `f${i}-`, shared: { use: 'f0.rig', anchor: 'larch' } }));
  const texts = new Map(Array.from({ length: files }, (_, i): [number, string] => [i, original(i)]));
  const open = new Set(texts.keys());
  const versions = new Map<number, number>();
  const differences: string[] = [];
  const faults: string[] = [];
  const memory: number[] = [];
  let compared = 0;

  const openIn = (client: BenchClient, i: number): void => client.notify('textDocument/didOpen', { textDocument: { uri: uriOf(i), languageId: 'rig', version: versions.get(i) ?? 1, text: texts.get(i)! } });
  const restart = async (): Promise<BenchClient> => {
    const client = await startServer();
    for (const i of open) openIn(client, i);
    return client;
  };
  let client = await restart();

  const ask = async (to: BenchClient, method: string, params: unknown): Promise<unknown> => {
    try {
      return (await to.request(method, params)).result;
    } catch (error) {
      const { code = 0, message } = error as { code?: number; message: string };
      // A newer text came meanwhile, or what was asked makes no sense there: that is an answer too.
      if ([-32801, -32800, -32802, -32602, -32803].includes(code)) return { refused: code };
      faults.push(`${method}: ${message}`);
      return undefined;
    }
  };

  const edit = (i: number): void => {
    const before = texts.get(i)!;
    let change: { range?: { start: Position; end: Position }; text: string };
    let now: string;
    if (before.length > 12_000 || random() < 0.1) {
      now = original(i);
      change = { text: now };
    } else {
      const start = below(before.length + 1);
      const end = Math.min(before.length, start + (random() < 0.7 ? below(3) : below(120)));
      const piece = random() < 0.5 ? '' : random() < 0.5 ? String.fromCharCode(32 + below(95)) : mutateText('line x {\n}\n', random).slice(0, 30);
      // What is written between the halves of a line break or of a letter cannot be told by a position.
      if (/^\r\n|^[\udc00-\udfff]/.test(before.slice(Math.max(0, start - 1))) || /[\ud800-\udfff]/.test(piece) || before.slice(end - 1, end + 1) === '\r\n') return;
      now = before.slice(0, start) + piece + before.slice(end);
      change = { range: { start: positionIn(before, start), end: positionIn(before, end) }, text: piece };
    }
    texts.set(i, now);
    versions.set(i, (versions.get(i) ?? 1) + 1);
    client.notify('textDocument/didChange', { textDocument: { uri: uriOf(i), version: versions.get(i) }, contentChanges: [change] });
  };

  const placed = (i: number, at: () => number): { textDocument: { uri: string }; position: Position } => ({ textDocument: { uri: uriOf(i) }, position: positionIn(texts.get(i)!, at()) });
  const questions: readonly ((i: number) => [string, object])[] = [
    (i) => ['textDocument/hover', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/completion', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/signatureHelp', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/definition', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/references', { ...placed(i, () => below(texts.get(i)!.length)), context: { includeDeclaration: true } }],
    (i) => ['textDocument/documentHighlight', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/prepareRename', placed(i, () => below(texts.get(i)!.length))],
    (i) => ['textDocument/rename', { ...placed(i, () => below(texts.get(i)!.length)), newName: 'other-name' }],
    (i) => ['textDocument/documentSymbol', { textDocument: { uri: uriOf(i) } }],
    (i) => ['textDocument/foldingRange', { textDocument: { uri: uriOf(i) } }],
    (i) => ['textDocument/documentLink', { textDocument: { uri: uriOf(i) } }],
    (i) => ['textDocument/formatting', { textDocument: { uri: uriOf(i) }, options: { tabSize: 2, insertSpaces: true } }],
    (i) => ['textDocument/inlayHint', { textDocument: { uri: uriOf(i) }, range: { start: { line: 0, character: 0 }, end: { line: 60, character: 0 } } }],
    (i) => ['textDocument/codeAction', { textDocument: { uri: uriOf(i) }, range: { start: { line: below(60), character: 0 }, end: { line: 60, character: 0 } }, context: { diagnostics: [] } }],
    (i) => ['textDocument/diagnostic', { textDocument: { uri: uriOf(i) } }],
    (i) => ['textDocument/semanticTokens/full', { textDocument: { uri: uriOf(i) } }],
    () => ['workspace/symbol', { query: 'main' }],
    (i) => ['textDocument/hover', { textDocument: { uri: uriOf(i) }, position: { line: below(1000), character: below(1000) } }],
    () => ['textDocument/hover', { textDocument: { uri: 'file:///elsewhere.rig' }, position: { line: 0, character: 0 } }],
  ];

  /** Names of results and handles of items differ from server to server; what they stand for must not. */
  const plain = (answer: unknown): unknown => JSON.parse(JSON.stringify(answer ?? null, (key, value: unknown) => (key === 'resultId' || (key === 'data' && !Array.isArray(value)) ? undefined : value)));
  const compare = async (): Promise<void> => {
    const fresh = await restart();
    for (let n = 0; n < 12; n++) {
      const i = [...open][below(open.size)]!;
      for (const question of questions) {
        const [method, params] = question(i);
        const [kept, anew] = [plain(await ask(client, method, params)), plain(await ask(fresh, method, params))];
        compared++;
        if (!isDeepStrictEqual(kept, anew) && differences.length < 5) differences.push(`${method} ${JSON.stringify(params)}\nkept ${JSON.stringify(kept).slice(0, 1500)}\nanew ${JSON.stringify(anew).slice(0, 1500)}\n${texts.get(i)!}`);
      }
    }
    await fresh.stop();
  };

  try {
    for (let step = 1; step <= steps && differences.length === 0; step++) {
      const i = below(files);
      const what = random();
      if (!open.has(i)) {
        open.add(i);
        openIn(client, i);
      } else if (what < 0.5) edit(i);
      else if (what < 0.52 && open.size > files / 2) {
        open.delete(i);
        client.notify('textDocument/didClose', { textDocument: { uri: uriOf(i) } });
      } else {
        const [method, params] = questions[below(questions.length)]!(i);
        await ask(client, method, params);
      }
      if (step % Math.max(1, Math.floor(steps / 20)) === 0) {
        memory.push(memoryOf(client.pid));
        log(`${step} steps, ${compared} answers compared, ${memory.at(-1)!.toFixed(0)} MB`);
      }
      if (step % compareEvery === 0) await compare();
      if (kills && random() < 0.0005) {
        process.kill(client.pid, 'SIGKILL');
        client = await restart();
        memory.length = 0;
      }
    }
    return { compared, differences, faults, memory };
  } finally {
    await client.stop();
  }
}
