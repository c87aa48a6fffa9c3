import { expect, test } from 'vitest';
import { parseAmount, parseQuantity } from '../../src-core/units/parse-quantity.ts';

const shown = (text: string): string => {
  const read = parseQuantity(text);
  return typeof read === 'string' ? read : `${Number(read.value.toPrecision(10))} ${read.dimension} ${read.unit?.symbol ?? '-'}`;
};

test.each([
  ['20,000 lbf', '88964.43231 force lbf'],
  ['22 ft 6 in', '6.858 length ft'],
  ['3/8 in', '0.009525 length in'],
  ['1 3/4 in', '0.04445 length in'],
  ['72 d', '72 diameters d'],
  ['3.5 fids', '73.5 diameters fids'],
  ['25 %', '0.25 ratio %'],
  ['25%', '0.25 ratio %'],
  ['12 deg', '0.2094395102 angle deg'],
  ['65 °C', '338.15 temperature °C'],
  ['65 degC', '338.15 temperature degC'],
  ['950 lb/ft2', '45486.24603 pressure lb/ft2'],
  ['0.4 m²', '0.4 area m2'],
  ['4 m/min', '0.06666666667 speed m/min'],
  ['30 days', '2592000 time days'],
  ['  3  ', '3 count -'],
  ['-2', '-2 count -'],
  ['1/2', '0.5 count -'],
])('%s is read as %s', (text, expected) => {
  expect(shown(text)).toBe(expected.replace('°C', 'degC'));
});

test.each([
  ['', 'cannot be read'],
  ['kN', 'cannot be read'],
  ['4.7 ton', 'can mean 1,000, 907 or 1,016 kg'],
  ['3 kM', 'is not a unit'],
  ['3 m and more', 'cannot be read'],
  ['6 in 22 ft', 'from the larger unit to the smaller'],
  ['1e9', 'is not a unit'],
  ['3; 4', 'cannot be read'],
  ['9999999999999999999 m', 'too large'],
  ['1/0 in', 'cannot be read'],
  ['7 '.repeat(60), 'cannot be read'],
])('%s is refused with a sentence', (text, part) => {
  const read = parseQuantity(text);
  expect(typeof read).toBe('string');
  expect(read).toContain(part);
  expect(parseAmount(text)).toContain(part);
});

test.each([
  ['15 to 25 %', 0.15, 0.25],
  ['25 % to 15 %', 0.15, 0.25],
  ['1 m to 120 cm', 1, 1.2],
  ['8 to 10', 8, 10],
  ['7 d', 7, 7],
])('%s is read as a range', (text, low, high) => {
  const read = parseAmount(text);
  if (typeof read === 'string') throw new Error(read);
  expect(read.amount.low).toBeCloseTo(low, 12);
  expect(read.amount.high).toBeCloseTo(high, 12);
});

test('a range of two measures is refused', () => {
  expect(parseAmount('3 m to 4 kg')).toContain('do not measure the same thing');
  expect(parseAmount('3 m to')).toContain('cannot be read');
  expect(parseAmount('to 3 m')).toContain('cannot be read');
});
