import { expect, test } from 'vitest';
import { fuzzInput, tryInput, type Depth } from './fuzz-input.ts';

const seed = 20260622;

function failures(from: number, to: number, depth: Depth): string[] {
  const found: string[] = [];
  for (let i = from; i < to && found.length < 3; i++) {
    const { text, random } = fuzzInput(seed, i);
    const wrong = tryInput(text, random, depth);
    if (wrong.length > 0) found.push(`input ${i} of seed ${seed}: ${wrong[0]!}\n${text}`);
  }
  return found;
}

test('the inputs are not rubbish: most of what grammar makes is understood', () => {
  const blocks = Array.from({ length: 200 }, (_, i) => fuzzInput(seed, i).text).filter((text) => /^(?:line|winch|chain|pull|kit|practice|shackle)\b/m.test(text));
  expect(blocks.length).toBeGreaterThan(100);
});

test('20,000 texts are read, bound and judged without throwing, every place inside its text', () => {
  expect(failures(0, 20_000, 'judge')).toEqual([]);
}, 300_000);

test('every editor feature, the formatter and the pictures answer for 1,000 texts', () => {
  expect(failures(20_000, 21_000, 'everything')).toEqual([]);
}, 300_000);
