import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { resplitChunks, splitChunks, type Edit, type PlacedChunk } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

const text = readFileSync(join(import.meta.dirname, '../../examples/plover.rig'), 'utf8');
const shape = (chunks: readonly PlacedChunk[]) => chunks.map((c) => [c.offset, c.chunk.text]);

/** The chunks after an edit, each where it stands now. */
function afterEdit(before: readonly PlacedChunk[], edit: Edit): PlacedChunk[] {
  const end = before.reduce((at, c) => at + c.chunk.text.length, 0);
  const { from, removed, added } = resplitChunks(before.map((c) => c.chunk), [...before.map((c) => c.offset), end], edit, topHeads);
  let offset = 0;
  return [...before.slice(0, from).map((c) => c.chunk), ...added, ...before.slice(from + removed).map((c) => c.chunk)].map((chunk) => {
    const placed = { chunk, offset };
    offset += chunk.text.length;
    return placed;
  });
}

const bits = ['{', '}', '\n', '\r', '"', '#', ' ', 'line x {\n', 'line', '\nwinch w\n', '\n{\n', '\n# note\n', '}\n\n', 'use "p.rig"\n', 'shackle a {', '->', '3 m', ''];

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
        chunks = afterEdit(chunks, { start, end, text: added });
        expect(shape(chunks)).toEqual(shape(splitChunks(now, topHeads)));
        expect(new Set(chunks.map((c) => c.chunk)).size).toBe(chunks.length);
      }
    }),
    { numRuns: 600 },
  );
});

test('what an edit does not touch keeps its identity', () => {
  const before = splitChunks(text, topHeads);
  const at = text.indexOf('92 kN');
  const after = afterEdit(before, { start: at, end: at + 2, text: '93' });
  expect(after.filter((c, i) => c.chunk !== before[i]?.chunk)).toHaveLength(1);
});
