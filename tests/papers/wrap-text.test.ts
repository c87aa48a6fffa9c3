import { expect, test } from 'vitest';
import { wrapText } from '../../src-core/papers/wrap-text.ts';
import { tied } from '../../src-core/units/number-and-unit.ts';

test('lines are cut at spaces, and never between a number and its unit', () => {
  expect(wrapText('a load of 4.7 t on it', 13)).toEqual(['a load of', '4.7 t on it']);
  expect(wrapText('at 78 %', 5)).toEqual(['at', '78 %']);
  // What only begins like a unit is a word.
  expect(wrapText('4 times', 4)).toEqual(['4', 'times']);
  expect(wrapText('', 10)).toEqual(['']);
});

test('for whatever cuts lines by itself the two are tied', () => {
  expect(tied('13.3 to 25.9 kN at 5 deg, 3 layers')).toBe('13.3 to 25.9\u00A0kN at 5\u00A0deg, 3 layers');
});
