import { expect, test } from 'vitest';
import { wordHere, wordsHere } from '../../src-core/vocabulary/trade-words.ts';
import type { Part } from '../../src-core/vocabulary/shape.ts';
import { vocabulary } from '../../src-core/vocabulary/vocabulary.ts';

const choices = (part: Part): string[] => (part.part === 'choice' ? Object.keys(part.of) : part.part === 'clause' ? part.parts.flatMap(choices) : []);
const heads = vocabulary.flatMap((b) => [b.head, ...b.statements.map((s) => s.head), ...(b.entries ?? []).map((s) => s.head)]);
const values = vocabulary.flatMap((b) => [...b.statements.flatMap((s) => s.parts), ...(b.entries ?? []).flatMap((s) => s.parts)].flatMap(choices));
const language = new Set<string>([...heads, ...values]);

test('what is offered for a word of the trade is a word of the language', () => {
  expect(Object.entries(wordsHere).flatMap(([written, here]) => here.filter((word) => !language.has(word)).map((word) => `${written}: ${word}`))).toEqual([]);
});

test('a word is offered only where it may stand, and never for itself', () => {
  expect(wordHere('chafe', ['cut', 'abrasion'])).toBe('abrasion');
  expect(wordHere('Chafe', ['cut', 'melt'])).toBeUndefined();
  expect(wordHere('swl', ['wll', 'breaking'])).toBe('wll');
  expect(wordHere('swl', ['working', 'breaking'])).toBe('working');
  for (const name of ['constructor', '__proto__', 'toString']) expect(wordHere(name, ['cut'])).toBeUndefined();
});
