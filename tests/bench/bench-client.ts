import { spawn, type ChildProcess } from 'node:child_process';
import type { BenchServer } from './servers.ts';

export interface Change {
  readonly offset: number;
  readonly remove: number;
  readonly insert: string;
}

interface Told {
  readonly at: number;
  readonly count: number;
  readonly version: number | undefined;
}

interface Answer {
  readonly result: unknown;
  readonly at: number;
  readonly took: number;
  readonly bytes: number;
}

const patience_ms = 120_000;

/** A text as an editor holds it. Every change keeps to one line. */
export class OpenText {
  readonly uri: string;
  text: string;
  version = 1;
  #starts: number[];

  constructor(uri: string, text: string) {
    this.uri = uri;
    this.text = text;
    this.#starts = [0, ...[...text.matchAll(/\n/g)].map((m) => m.index + 1)];
  }

  position(offset: number): { line: number; character: number } {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (this.#starts[mid]! <= offset) low = mid;
      else high = mid - 1;
    }
    return { line: low, character: offset - this.#starts[low]! };
  }

  /** The change as a client sends it, and the one that undoes it. */
  change({ offset, remove, insert }: Change): { readonly sent: object; readonly undo: Change } {
    const sent = { range: { start: this.position(offset), end: this.position(offset + remove) }, text: insert };
    const undo = { offset, remove: insert.length, insert: this.text.slice(offset, offset + remove) };
    const line = this.position(offset).line;
    this.text = this.text.slice(0, offset) + insert + this.text.slice(offset + remove);
    this.version++;
    if (insert.length !== remove) for (let i = line + 1; i < this.#starts.length; i++) this.#starts[i]! += insert.length - remove;
    return { sent, undo };
  }
}

/** Starts a server and takes the time of what it answers. The clock stops when the last byte is there, before it is read. */
export class BenchClient {
  readonly server: BenchServer;
  readonly started = performance.now();
  readonly #child: ChildProcess;
  readonly #waiting = new Map<number, (message: { result?: unknown; error?: { message: string; code: number } }, at: number, bytes: number) => void>();
  readonly #told = new Map<string, Told>();
  readonly #listeners = new Set<(uri: string, told: Told) => void>();
  #chunks: Buffer[] = [];
  #have = 0;
  #need = -1;
  #id = 0;
  #ended: string | undefined;
  #complaint = '';
  pulls = false;
  capabilities: Record<string, unknown> = {};
  published = 0;
  /** Called when the server asks to be asked again. */
  onRefresh: (() => void) | undefined;

  constructor(server: BenchServer) {
    this.server = server;
    this.#child = spawn(server.command[0]!, server.command.slice(1), { stdio: ['pipe', 'pipe', 'pipe'], env: { ...process.env, ...server.env } });
    this.#child.stdout!.on('data', (data: Buffer) => this.#take(data));
    this.#child.stderr!.on('data', (data: Buffer) => (this.#complaint = (this.#complaint + String(data)).slice(-2000)));
    this.#child.stdin!.on('error', () => undefined);
    this.#child.on('exit', (code) => {
      this.#ended = `${server.name} ended (${code}) ${this.#complaint}`;
      for (const fail of this.#waiting.values()) fail({ error: { code: 0, message: this.#ended } }, performance.now(), 0);
    });
  }

  get pid(): number {
    return this.#child.pid!;
  }

  #take(data: Buffer): void {
    this.#chunks.push(data);
    this.#have += data.length;
    for (;;) {
      if (this.#need < 0) {
        const all = this.#joined();
        const head = all.indexOf('\r\n\r\n');
        if (head < 0) return;
        this.#need = Number(/content-length: *(\d+)/i.exec(all.toString('latin1', 0, head))![1]);
        this.#keep(all.subarray(head + 4));
      }
      if (this.#have < this.#need) return;
      const at = performance.now();
      const all = this.#joined();
      const bytes = this.#need;
      const body = all.subarray(0, bytes).toString('utf8');
      this.#keep(all.subarray(bytes));
      this.#need = -1;
      this.#message(JSON.parse(body) as never, at, bytes);
      if (this.#have === 0) return;
    }
  }

  #joined(): Buffer {
    if (this.#chunks.length !== 1) this.#chunks = [Buffer.concat(this.#chunks)];
    return this.#chunks[0]!;
  }

  #keep(rest: Buffer): void {
    this.#chunks = rest.length > 0 ? [rest] : [];
    this.#have = rest.length;
  }

  #message(message: { id?: number; method?: string; params?: never; result?: unknown; error?: { message: string; code: number } }, at: number, bytes: number): void {
    const { method } = message;
    if (method === undefined) {
      const answer = this.#waiting.get(message.id!);
      this.#waiting.delete(message.id!);
      answer?.(message, at, bytes);
    } else if (message.id !== undefined) {
      const items = (message.params as { items?: { section?: string }[] } | undefined)?.items ?? [];
      const result = method === 'workspace/configuration' ? items.map(({ section }) => (section ?? '').split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], this.server.settings) ?? null) : null;
      this.#send({ id: message.id, result });
      if (method === 'workspace/diagnostic/refresh') this.onRefresh?.();
    } else if (method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics, version } = message.params as unknown as { uri: string; diagnostics: unknown[]; version?: number };
      const told = { at, count: diagnostics.length, version };
      this.published++;
      this.#told.set(uri, told);
      for (const listener of [...this.#listeners]) listener(uri, told);
    }
  }

  #send(message: object): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.#child.stdin!.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  notify(method: string, params: unknown): void {
    this.#send({ method, params });
  }

  request(method: string, params: unknown): Promise<Answer> {
    const started = performance.now();
    const id = ++this.#id;
    return new Promise((done, fail) => {
      if (this.#ended !== undefined) return fail(new Error(this.#ended));
      const timer = setTimeout(() => fail(new Error(`${this.server.name}: no answer to ${method}`)), patience_ms);
      this.#waiting.set(id, ({ result, error }, at, bytes) => {
        clearTimeout(timer);
        if (error === undefined) done({ result, at, took: at - started, bytes });
        else fail(Object.assign(new Error(`${this.server.name}: ${method}: ${error.message}`), { code: error.code }));
      });
      this.#send({ id, method, params });
    });
  }

  /** Milliseconds from the start of the process to the answer. With `refreshes` it can be asked to ask again, as editors can. */
  async initialize(rootUri: string, { refreshes = false } = {}): Promise<number> {
    const { result, at } = await this.request('initialize', {
      processId: process.pid,
      rootUri,
      workspaceFolders: [{ uri: rootUri, name: 'bench' }],
      initializationOptions: this.server.initializationOptions,
      capabilities: {
        workspace: { configuration: true, workspaceFolders: true, ...(refreshes ? { diagnostics: { refreshSupport: true } } : {}) },
        textDocument: {
          publishDiagnostics: { versionSupport: true },
          ...(this.server.pulls ? { diagnostic: {} } : {}),
          hover: { contentFormat: ['markdown'] },
          completion: { completionItem: { snippetSupport: true }, contextSupport: true },
          documentSymbol: { hierarchicalDocumentSymbolSupport: true },
          formatting: {},
          semanticTokens: { requests: { full: true }, tokenTypes: ['variable', 'number', 'enumMember', 'keyword', 'string', 'property', 'type', 'comment', 'function', 'operator'], tokenModifiers: [], formats: ['relative'] },
        },
      },
    });
    this.capabilities = (result as { capabilities: Record<string, unknown> }).capabilities;
    this.pulls = this.server.pulls && this.capabilities['diagnosticProvider'] !== undefined;
    this.notify('initialized', {});
    if (this.server.settings !== undefined) this.notify('workspace/didChangeConfiguration', { settings: this.server.settings });
    return at - this.started;
  }

  open(text: OpenText): void {
    this.notify('textDocument/didOpen', { textDocument: { uri: text.uri, languageId: this.server.language.id, version: text.version, text: text.text } });
  }

  change(text: OpenText, change: Change): Change {
    const { sent, undo } = text.change(change);
    this.notify('textDocument/didChange', { textDocument: { uri: text.uri, version: text.version }, contentChanges: [sent] });
    return undo;
  }

  /** When diagnostics with more than `base` findings, or with no more than those, are there for this version. */
  async diagnostics(text: OpenText, hasError: boolean, base = 0): Promise<Told> {
    const fits = (count: number): boolean => (hasError ? count > base : count <= base);
    if (this.pulls) {
      for (;;) {
        try {
          const { result, at } = await this.request('textDocument/diagnostic', { textDocument: { uri: text.uri } });
          const count = (result as { items?: unknown[] }).items?.length ?? 0;
          if (!fits(count)) throw new Error(`${this.server.name}: ${count} findings where ${hasError ? 'one more' : 'none more'} is due`);
          return { at, count, version: text.version };
        } catch (error) {
          // The server has a newer text, or asks to be asked again.
          if (![-32802, -32801, -32800].includes((error as { code?: number }).code ?? 0)) throw error;
        }
      }
    }
    return new Promise((done, fail) => {
      const finish = (told: Told): void => {
        clearTimeout(timer);
        this.#listeners.delete(listener);
        done(told);
      };
      const listener = (uri: string, told: Told): void => {
        if (uri === text.uri && (told.version === undefined || told.version >= text.version) && fits(told.count)) finish(told);
      };
      const timer = setTimeout(() => {
        this.#listeners.delete(listener);
        fail(new Error(`${this.server.name}: no diagnostics for ${text.uri}; the last had ${this.#told.get(text.uri)?.count}`));
      }, patience_ms);
      this.#listeners.add(listener);
    });
  }

  async stop(): Promise<void> {
    const gone = new Promise<void>((done) => (this.#ended === undefined ? this.#child.once('exit', () => done()) : done()));
    const soon = new Promise<void>((done) => setTimeout(done, 2000));
    await Promise.race([this.request('shutdown', undefined).then(() => this.notify('exit', undefined), () => undefined), soon]);
    await Promise.race([gone, soon]);
    this.#child.kill('SIGKILL');
    await gone;
  }
}
