import fc from 'fast-check';
import { PassThrough } from 'node:stream';
import { setImmediate as turn } from 'node:timers/promises';
import { StreamMessageReader, type Message, type MessageReader } from 'vscode-languageserver/node';
import { describe, expect, test } from 'vitest';
import { RigFile } from '../../src-core/project.ts';
import { foldChanges, type TextChange } from '../../server/language-server/fold-changes.ts';
import { joinChanges } from '../../server/language-server/join-changes.ts';
import { Positions } from '../../server/language-server/positions.ts';
import { BrokenHead, MessageInput } from '../../server/message-input.ts';
import { rigText } from '../support/rig-text.ts';

const framed = (body: string, head = `Content-Length: ${Buffer.byteLength(body)}`): string => `${head}\r\n\r\n${body}`;

/** What a reader makes of a stream that comes in pieces cut at these places. */
async function read(make: (stream: PassThrough) => MessageReader, text: string, cuts: readonly number[] = []): Promise<{ messages: Message[]; errors: Error[] }> {
  const stream = new PassThrough();
  const [messages, errors]: [Message[], Error[]] = [[], []];
  const reader = make(stream);
  reader.onError((error) => errors.push(error));
  reader.listen((message) => messages.push(message));
  const bytes = Buffer.from(text);
  let last = 0;
  for (const cut of [...cuts.map((c) => c % (bytes.length + 1)).sort((a, b) => a - b), bytes.length]) {
    if (cut > last) stream.write(bytes.subarray(last, cut));
    last = Math.max(last, cut);
    await turn();
  }
  for (let turns = 0; turns < 40; turns++) await turn();
  return { messages, errors };
}
const ours = (stream: PassThrough): MessageReader => new MessageInput(stream);

describe('messages from a stream', () => {
  test('are those that the library reads, however the stream is cut', async () => {
    const body = fc.oneof(fc.json(), fc.record({ jsonrpc: fc.constant('2.0'), method: fc.string({ unit: 'grapheme' }) }).map((m) => JSON.stringify(m)), fc.constant('{"half":'));
    const head = fc.constantFrom('', 'Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n');
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(head, body), { maxLength: 6 }), fc.array(fc.nat(), { maxLength: 6 }), async (sent, cuts) => {
        const text = sent.map(([before, b]) => framed(b, `${before}Content-Length: ${Buffer.byteLength(b)}`)).join('');
        const [mine, theirs] = await Promise.all([read(ours, text, cuts), read((stream) => new StreamMessageReader(stream), text, cuts)]);
        expect(mine.messages).toEqual(theirs.messages);
        expect(mine.errors.map((e) => e.constructor)).toEqual(theirs.errors.map((e) => e.constructor));
      }),
      { numRuns: 60 },
    );
  });

  test.each(['Content-Length: -5', 'Content-Length: many', 'Content-Length: 12 bytes', 'Content-Type: text', `${'x'.repeat(10_000)}`])('a head without a length ends it: %.24s', async (head) => {
    const { messages, errors } = await read(ours, framed('{"method":"a"}', head));
    expect(messages).toEqual([]);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toBeInstanceOf(BrokenHead);
  });

  test('one that whoever takes it throws at does not keep the next from being taken', async () => {
    const stream = new PassThrough();
    const taken: Message[] = [];
    new MessageInput(stream).listen((message) => {
      taken.push(message);
      throw new Error('no');
    });
    stream.write(framed('{"a":1}') + framed('{"b":2}'));
    await turn();
    expect(taken).toEqual([{ a: 1 }, { b: 2 }]);
  });
});

const change = (uri: string, version: number, ...contentChanges: unknown[]): Message => ({ jsonrpc: '2.0', method: 'textDocument/didChange', params: { textDocument: { uri, version }, contentChanges } }) as Message;
const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } };

describe('changes of a document', () => {
  test('with nothing between them are one', () => {
    const [a, b] = [{ text: 'a', range }, { text: 'b' }];
    const hover = { jsonrpc: '2.0', id: 1, method: 'textDocument/hover' } as Message;
    expect(joinChanges([change('x', 2, a), change('x', 3, b, a), hover, change('x', 4, a), change('y', 9, a), change('x', 5, b)])).toEqual([change('x', 3, a, b, a), hover, change('x', 4, a), change('y', 9, a), change('x', 5, b)]);
  });

  test.each([[{ text: 7 }], [null], [{ text: 'a', range: { start: 1 } }]])('of which a part makes no sense stay by themselves: %j', (odd) => {
    const sent = [change('x', 2, { text: 'a' }), change('x', 3, odd), change('x', 4, { text: 'b' })];
    expect(joinChanges(sent)).toEqual(sent);
  });

  test('inside lines come to the same made together and one by one', () => {
    const texts = [rigText(60, 3), rigText(60, 3).replaceAll('\n', '\r\n'), 'line a {\n  length 30 m\n}', '\n\n', '#\r\nx\r\n', 'a\rb\r\n'];
    const one = fc.record({ line: fc.nat(70), a: fc.nat(30), b: fc.nat(30), text: fc.constantFrom('', '9', '{', '}', '"', '#', ' line b {', '\u{1f69b}') });
    let folded = 0;
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.array(one, { minLength: 8, maxLength: 30 }), (text, sent) => {
        const positions = new Positions('utf-16');
        let [byOne, together] = [RigFile.read('x.rig', text), RigFile.read('x.rig', text)];
        const changes = sent.map(({ line, a, b, text: inserted }): TextChange => ({ range: { start: { line: line % byOne.lines.lineCount, character: a }, end: { line: line % byOne.lines.lineCount, character: b } }, text: inserted }));
        const edits = foldChanges(together, changes);
        if (edits === undefined) return;
        folded++;
        for (const { range: at, text: inserted } of changes) byOne = byOne.edited({ ...positions.span(byOne.lines, at), text: inserted });
        for (const edit of edits) together = together.edited(edit);
        expect(together.text).toBe(byOne.text);
        expect(together.chunks.map((c) => [c.offset, c.chunk.text])).toEqual(byOne.chunks.map((c) => [c.offset, c.chunk.text]));
      }),
      { numRuns: 300 },
    );
    expect(folded).toBeGreaterThan(150);
  });

  test('that take a line break with them, or stand between two that would be one, are made one by one', () => {
    const eight = (line: number, text: string): TextChange[] => Array.from({ length: 8 }, () => ({ range: { start: { line, character: 0 }, end: { line, character: 1 } }, text }));
    expect(foldChanges(RigFile.read('x.rig', 'a\nb\n'), eight(0, '\n'))).toBeUndefined();
    expect(foldChanges(RigFile.read('x.rig', 'a\rb\n'), eight(1, ''))).toBeUndefined();
    expect(foldChanges(RigFile.read('x.rig', 'a\nb\n'), eight(9, 'x'))).toBeUndefined();
    expect(foldChanges(RigFile.read('x.rig', 'a\nb\n'), eight(1, 'x'))).toMatchObject([{ start: 2, end: 3, text: 'x' }]);
  });
});
