import { spawn } from 'node:child_process';

export interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

/** A language client that knows the framing and nothing else: what the least of editors would send. */
export interface Peer {
  request<T>(method: string, params?: unknown): Promise<T>;
  notify(method: string, params?: unknown): void;
  /** Writes bytes as they are, for messages that no client should send. */
  write(text: string): void;
  /** The first notification of this method that passes the test, among those received and those to come. */
  notification<T>(method: string, test?: (params: T) => boolean): Promise<T>;
  /** Every message received so far, in order. */
  readonly received: readonly Message[];
  readonly ended: Promise<number | null>;
  kill(): void;
  signal(name: NodeJS.Signals): void;
  /** Closes the server's input, as an editor does that ends. */
  hangUp(): void;
}

export class RefusedRequest extends Error {
  readonly code: number;

  constructor(message: string, code: number) {
    super(message);
    this.code = code;
  }
}

type Answers = Readonly<Record<string, (params: never) => unknown>>;

const patience_ms = 15_000;

export function startPeer(command: string, words: readonly string[], answers: Answers = {}, env: Readonly<Record<string, string>> = {}): Peer {
  const child = spawn(command, words, { stdio: ['pipe', 'pipe', 'pipe'], env: { ...process.env, ...env } });
  const received: Message[] = [];
  const waiting = new Map<number, (message: Message) => void>();
  const watchers = new Set<() => void>();
  let complaint = '';
  let unread = Buffer.alloc(0);
  let lastId = 0;

  const write = (text: string): void => void child.stdin.write(text);
  const send = (message: Message): void => {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };

  const take = (message: Message): void => {
    received.push(message);
    if (message.method === undefined) {
      waiting.get(Number(message.id))?.(message);
      waiting.delete(Number(message.id));
    } else if (message.id !== undefined) {
      const answer = answers[message.method];
      send(answer === undefined ? { id: message.id, error: { code: -32601, message: 'not known here' } } : { id: message.id, result: answer(message.params as never) ?? null });
    }
    for (const watcher of [...watchers]) watcher();
  };

  child.stderr.on('data', (data) => (complaint += String(data)));
  child.stdin.on('error', () => undefined);
  child.stdout.on('data', (data: Buffer) => {
    unread = Buffer.concat([unread, data]);
    for (;;) {
      const head = unread.indexOf('\r\n\r\n');
      if (head === -1) return;
      const length = Number(/content-length: *(\d+)/i.exec(unread.toString('latin1', 0, head))?.[1]);
      if (unread.length < head + 4 + length) return;
      const body = unread.toString('utf8', head + 4, head + 4 + length);
      unread = unread.subarray(head + 4 + length);
      take(JSON.parse(body) as Message);
    }
  });

  const ended = new Promise<number | null>((done) =>
    child.on('exit', (code) => {
      for (const finish of waiting.values()) finish({ error: { code: 0, message: `the server ended (${code})\n${complaint}` } });
      done(code);
    }),
  );

  const inTime = <T>(what: string, start: (done: (value: T) => void, fail: (error: Error) => void) => void): Promise<T> =>
    new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`${what}: nothing came\n${complaint}`)), patience_ms);
      const settle = <V>(then: (value: V) => void) => (value: V): void => {
        clearTimeout(timer);
        then(value);
      };
      start(settle(resolve), settle(reject));
    });

  return {
    received,
    ended,
    write,
    notify: (method, params) => send({ method, params }),
    kill: () => void child.kill('SIGKILL'),
    signal: (name) => void child.kill(name),
    hangUp: () => void child.stdin.end(),
    request: <T>(method: string, params?: unknown) =>
      inTime<T>(method, (done, fail) => {
        const id = ++lastId;
        waiting.set(id, ({ error, result }) => (error === undefined ? done(result as T) : fail(new RefusedRequest(error.message, error.code))));
        send({ id, method, params });
      }),
    notification: <T>(method: string, test: (params: T) => boolean = () => true) =>
      inTime<T>(method, (done) => {
        const look = (): void => {
          const found = received.find((message) => message.method === method && message.id === undefined && test(message.params as T));
          if (found === undefined) return;
          watchers.delete(look);
          done(found.params as T);
        };
        watchers.add(look);
        look();
      }),
  };
}
