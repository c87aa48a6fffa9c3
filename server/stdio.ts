import './no-parent-watch.ts';
import { AbstractMessageWriter, createConnection, StreamMessageReader, type DataCallback, type Disposable, type Message, type MessageWriter } from 'vscode-languageserver/node';
import { serveLanguage } from './language-server/serve.ts';

interface Received {
  readonly method?: string;
  readonly params?: { processId?: unknown };
}

let shutDown = false;

/** Behind a head that says no length nothing can be read any more. What is wrong inside a message is a `SyntaxError`. */
function isHeadBroken(error: Error): boolean {
  return !(error instanceof SyntaxError) && /header|content-length/i.test(error.message);
}

/** The library takes a length below zero for one, and cuts what follows in the wrong places from there on. */
function refuseNegativeLengths(reader: unknown): void {
  const { buffer } = reader as { readonly buffer: { tryReadHeaders(lower: boolean): Map<string, string> | undefined } };
  const read = buffer.tryReadHeaders.bind(buffer);
  buffer.tryReadHeaders = (lower) => {
    const head = read(lower);
    const length = head?.get('content-length');
    if (length !== undefined && parseInt(length) < 0) throw new Error(`Content-Length is ${length}`);
    return head;
  };
}

/** The same request to the library for editors that say their process in the first message. */
class Input extends StreamMessageReader {
  override listen(take: DataCallback): Disposable {
    this.onError((error) => {
      if (!isHeadBroken(error)) return;
      process.stderr.write(`linewright: the input cannot be read on: ${error.message}\n`);
      process.exit(1);
    });
    refuseNegativeLengths(this);
    return super.listen((message) => {
      const { method, params } = message as Received;
      if (method === 'initialize' && typeof params === 'object') params.processId = null;
      if (method === 'shutdown') shutDown = true;
      take(message);
    });
  }
}

/** Header and body go out together: the library writes them one after the other, which costs a message twice the way through the system. */
class Output extends AbstractMessageWriter implements MessageWriter {
  readonly #stream: NodeJS.WritableStream;
  #failed = 0;

  constructor(stream: NodeJS.WritableStream) {
    super();
    this.#stream = stream;
    stream.on('error', (error: Error) => this.fireError(error));
    stream.on('close', () => this.fireClose());
  }

  write(message: Message): Promise<void> {
    return new Promise((done, fail) => {
      const body = JSON.stringify(message);
      this.#stream.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`, 'utf8', (error) => {
        if (error === undefined || error === null) return done();
        this.fireError(error, message, ++this.#failed);
        fail(error);
      });
    });
  }

  end(): void {
    this.#stream.end();
  }
}

/** Serves the editor at the other end of the standard streams, whatever the command line says. */
export function serveStdio(): void {
  // Without an editor there is nobody to serve. One that asked for the end before ended well.
  for (const event of ['end', 'close']) process.stdin.on(event, () => process.exit(shutDown ? 0 : 1));
  serveLanguage(createConnection(new Input(process.stdin), new Output(process.stdout)), async () => {
    const engine = await import('./language-server/engine.ts');
    const { diskFiles } = await import('./language-server/disk-files.ts');
    return { engine, disk: diskFiles };
  });
}
