import { PassThrough } from 'node:stream';
import { createConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { createMessageConnection, type MessageConnection } from 'vscode-jsonrpc/node';
import type { OpenFolder } from '../../server/language-server/folder-files.ts';
import { serveLanguage } from '../../server/language-server/serve.ts';
import { MessageInput } from '../../server/message-input.ts';

export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}
export interface Diagnostic {
  readonly range: Range;
  readonly code: string;
  readonly severity: number;
  readonly message: string;
  readonly source: string;
  readonly relatedInformation?: readonly { readonly location: { readonly uri: string }; readonly message: string }[];
}

export const settings = { asOf: '2026-06-22' };

/** A server in this process, and a client that knows the framing and what a test tells it. */
export class Client {
  readonly connection: MessageConnection;
  /** Every notification and request that the server sent, in order. */
  readonly received: { readonly method: string; readonly params: never }[] = [];
  readonly #watchers = new Set<() => void>();
  readonly #up: PassThrough;

  constructor(disk?: OpenFolder, answers: Readonly<Record<string, (params: never) => unknown>> = {}) {
    const [up, down] = [new PassThrough(), new PassThrough()];
    this.#up = up;
    serveLanguage(createConnection(new MessageInput(up), new StreamMessageWriter(down)), async () => ({ engine: await import('../../server/language-server/engine.ts'), disk }));
    this.connection = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    const seen = (method: string, params: unknown): void => {
      this.received.push({ method, params: params as never });
      for (const watcher of [...this.#watchers]) watcher();
    };
    this.connection.onNotification((method, params) => seen(method, params));
    this.connection.onRequest((method, params) => {
      seen(method, params);
      const answer = answers[method];
      if (answer !== undefined) return answer(params as never);
      return method === 'workspace/configuration' ? [{ check: settings }] : null;
    });
    this.connection.listen();
  }

  async start(capabilities: unknown = {}, more: Record<string, unknown> = {}): Promise<{ capabilities: Record<string, never> }> {
    const answer = await this.request<{ capabilities: Record<string, never> }>('initialize', { processId: null, rootUri: null, capabilities, ...more });
    this.notify('initialized', {});
    return answer;
  }

  request<T>(method: string, params?: unknown): Promise<T> {
    return this.connection.sendRequest(method, params) as Promise<T>;
  }

  notify(method: string, params?: unknown): void {
    void this.connection.sendNotification(method, params);
  }

  /** Writes bytes as they are. */
  write(text: string): void {
    this.#up.write(text);
  }

  open(uri: string, text: string, version = 1): void {
    this.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'rig', version, text } });
  }

  change(uri: string, version: number, ...contentChanges: { readonly range?: Range; readonly text: string }[]): void {
    this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges });
  }

  at(uri: string, line: number, character: number): { textDocument: { uri: string }; position: Position } {
    return { textDocument: { uri }, position: { line, character } };
  }

  /** The first message of a method that passes the test, among those received and those to come. */
  message<T>(method: string, test: (params: T) => boolean = () => true): Promise<T> {
    return new Promise((done, fail) => {
      const timer = setTimeout(() => fail(new Error(`${method}: nothing came; received ${JSON.stringify(this.received.map((m) => m.method))}`)), 8000);
      const look = (): void => {
        const found = this.received.find((m) => m.method === method && test(m.params));
        if (found === undefined) return;
        clearTimeout(timer);
        this.#watchers.delete(look);
        done(found.params);
      };
      this.#watchers.add(look);
      look();
    });
  }

  /** Findings that were sent for a document, those of the newest message that passes the test. */
  async published(uri: string, test: (diagnostics: readonly Diagnostic[]) => boolean = () => true): Promise<readonly Diagnostic[]> {
    const { diagnostics } = await this.message<{ uri: string; diagnostics: readonly Diagnostic[] }>('textDocument/publishDiagnostics', (p) => p.uri === uri && test(p.diagnostics));
    return diagnostics;
  }

  async pull(uri: string, previousResultId?: string): Promise<{ kind: string; resultId?: string; items?: readonly Diagnostic[] }> {
    return this.request('textDocument/diagnostic', { textDocument: { uri }, ...(previousResultId === undefined ? {} : { previousResultId }) });
  }

  /** Resolves when everything sent before has been taken in. */
  async settled(): Promise<void> {
    await this.request('linewright/rules', {});
  }

  dispose(): void {
    this.connection.dispose();
  }
}

/** Capabilities of a client that asks for findings. */
export const pulling = { textDocument: { diagnostic: { dynamicRegistration: false } }, workspace: { configuration: true } };

/** A folder of texts, for a server without a disk. `reads` counts how often each was read. */
export function textFolder(folderUri: string, texts: Map<string, string>, reads: string[] = [], isCut = false): OpenFolder {
  return (uri) =>
    uri !== folderUri
      ? undefined
      : {
          async read(path) {
            reads.push(path);
            const text = texts.get(path);
            return text === undefined ? { absent: 'missing' } : { text };
          },
          list: async (wanted) => ({ paths: [...texts.keys()].filter((path) => path.endsWith(wanted === 'rigs' ? '.rig' : '.md')), isCut }),
        };
}
