import fc from 'fast-check';
import { expect, test } from 'vitest';
import { diffLines } from '../../src-core/papers/diff-lines.ts';

const text = fc.array(fc.constantFrom('a', 'b', 'c', ''), { maxLength: 14 });

/** Length of the longest common subsequence, the slow and plain way. */
function longestCommon(a: readonly string[], b: readonly string[]): number {
  let row = new Array<number>(b.length + 1).fill(0);
  for (const x of a) row = b.reduce<number[]>((next, y, j) => [...next, x === y ? row[j]! + 1 : Math.max(row[j + 1]!, next[j]!)], [0]);
  return row[b.length]!;
}

test('what goes and comes turns one text into the other', () => {
  fc.assert(
    fc.property(text, text, (before, after) => {
      const changes = diffLines(before, after);
      const gone = new Set(changes.filter((c) => c.side === 'old').map((c) => c.line));
      const come = new Set(changes.filter((c) => c.side === 'new').map((c) => c.line));
      expect(before.filter((_, i) => !gone.has(i + 1))).toEqual(after.filter((_, i) => !come.has(i + 1)));
      for (const { side, line, text: said } of changes) expect((side === 'old' ? before : after)[line - 1]).toBe(said);
    }),
  );
});

test('no difference is longer than it must be', () => {
  fc.assert(fc.property(text, text, (before, after) => diffLines(before, after).length === before.length + after.length - 2 * longestCommon(before, after)));
});

test('texts that have nothing in common are replaced, however long', () => {
  const [before, after] = [Array.from({ length: 5000 }, (_, i) => `a${i}`), Array.from({ length: 5000 }, (_, i) => `b${i}`)];
  expect(diffLines(before, after)).toHaveLength(10_000);
});
