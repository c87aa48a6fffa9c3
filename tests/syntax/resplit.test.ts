import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { resplitChunks, splitChunks, type PlacedChunk } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

const text = readFileSync(join(import.meta.dirname, '../../examples/plover.rig'), 'utf8');
const shape = (chunks: readonly PlacedChunk[]) => chunks.map((c) => [c.offset, c.chunk.text]);
const bits = ['{', '}', '\n', '\r', '"', '#', ' ', 'line x {\n', 'line', '}\n\n', 'use "p.rig"\n', 'shackle a {', '->', '3 m', ''];

test('chunks after edits are the chunks of the new text', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(40), fc.array(fc.constantFrom(...bits), { maxLength: 3 })), { minLength: 1, maxLength: 12 }), (edits) => {
      let now = text;
      let chunks = splitChunks(now, topHeads);
      for (const [where, remove, insert] of edits) {
        const start = Math.floor(where * now.length);
        const end = Math.min(now.length, start + remove);
        const added = insert.join('');
        now = now.slice(0, start) + added + now.slice(end);
        chunks = resplitChunks(chunks, { start, end, text: added }, now, topHeads);
        expect(shape(chunks)).toEqual(shape(splitChunks(now, topHeads)));
      }
    }),
    { numRuns: 400 },
  );
});

test('what an edit does not touch keeps its identity', () => {
  const before = splitChunks(text, topHeads);
  const at = text.indexOf('92 kN');
  const now = text.slice(0, at) + '93' + text.slice(at + 2);
  const after = resplitChunks(before, { start: at, end: at + 2, text: '93' }, now, topHeads);
  expect(after.filter((c, i) => c.chunk !== before[i]?.chunk)).toHaveLength(1);
});
