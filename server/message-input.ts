import { AbstractMessageReader, type DataCallback, type Disposable, type Message, type MessageReader } from 'vscode-languageserver/node';
import { joinChanges } from './language-server/join-changes.ts';

/** What stands before a message is shorter than this. */
const longestHead = 8192;
const lengthIn = /^content-length *: *(\d{1,15}) *$/im;

/** Behind a head that says no length nothing can be read any more. */
export class BrokenHead extends Error {}

/**
 * Reads messages from a stream. The library, which the tests compare it with, takes a turn of the event loop for each message. Here all that
 * has come is read at once, and what was changed in a document meanwhile is handed on as one change.
 */
export class MessageInput extends AbstractMessageReader implements MessageReader {
  readonly #stream: NodeJS.ReadableStream;
  #pieces: Buffer[] = [];
  #have = 0;
  /** Length of the message that has begun; undefined while its head is awaited. */
  #need: number | undefined;

  constructor(stream: NodeJS.ReadableStream) {
    super();
    this.#stream = stream;
  }

  listen(take: DataCallback): Disposable {
    const safely = (work: () => void): void => {
      try {
        work();
      } catch (error) {
        this.fireError(error);
      }
    };
    const data = (piece: Buffer): void => safely(() => {
      for (const message of joinChanges(this.#read(piece))) safely(() => take(message));
    });
    this.#stream.on('data', data);
    this.#stream.on('error', (error) => this.fireError(error));
    this.#stream.on('close', () => this.fireClose());
    return { dispose: () => this.#stream.off('data', data) };
  }

  /** The messages that a piece of the stream completes. A message that cannot be read is told of, and passed over. */
  #read(piece: Buffer): Message[] {
    this.#pieces.push(piece);
    this.#have += piece.length;
    const messages: Message[] = [];
    for (;;) {
      this.#need ??= this.#readHead();
      if (this.#need === undefined || this.#have < this.#need) return messages;
      const all = this.#joined();
      const body = all.toString('utf8', 0, this.#need);
      this.#keep(all.subarray(this.#need));
      this.#need = undefined;
      try {
        messages.push(JSON.parse(body) as Message);
      } catch (error) {
        this.fireError(error);
      }
    }
  }

  /** The length that a head says; undefined while the head is not there to its end. */
  #readHead(): number | undefined {
    if (this.#have === 0) return undefined;
    const all = this.#joined();
    const end = all.subarray(0, longestHead).indexOf('\r\n\r\n');
    if (end < 0 && all.length < longestHead) return undefined;
    const head = all.toString('latin1', 0, end < 0 ? longestHead : end);
    const length = end < 0 ? undefined : lengthIn.exec(head)?.[1];
    if (length === undefined) throw new BrokenHead(`a message begins with \`Content-Length\` and a number, not with ${JSON.stringify(head.slice(0, 80))}`);
    this.#keep(all.subarray(end + 4));
    return Number(length);
  }

  #joined(): Buffer {
    if (this.#pieces.length > 1) this.#pieces = [Buffer.concat(this.#pieces)];
    return this.#pieces[0]!;
  }

  #keep(rest: Buffer): void {
    this.#pieces = rest.length > 0 ? [rest] : [];
    this.#have = rest.length;
  }
}
