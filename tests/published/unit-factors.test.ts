import Qty from 'js-quantities';
import { describe, expect, test } from 'vitest';
import { standardGravity, toSI, unitNamed, units } from '../../src-core/units/unit-table.ts';

describe('NIST SP 811 (2008), app. B', () => {
  // Typed from the document; exact there unless a tolerance stands beside it.
  test.each([
    ['lb', 0.45359237, 0],
    ['lbf', 4.4482216152605, 1e-14],
    ['kgf', 9.80665, 0],
    ['short-ton', 907.18474, 1e-15],
    ['long-ton', 1016.0469088, 1e-15],
    ['t', 1000, 0],
    ['in', 0.0254, 0],
    ['ft', 0.3048, 1e-15],
    ['yd', 0.9144, 1e-15],
    ['mph', 0.44704, 1e-15],
    // B.8 gives seven digits: pound-force on a square foot 47.880 26, foot pound-force 1.355 818, pound a foot 1.488 164.
    ['lb/ft2', 47.88026, 1e-7],
    ['ft-lbf', 1.355818, 1e-6],
    ['lb/ft', 1.488164, 1e-6],
    ['lbf/ft', 14.5939, 1e-6],
    ['kip', 4448.222, 1e-6],
    ['deg', 0.01745329, 1e-6],
  ])('one %s is %d in SI', (word, expected, tolerance) => {
    expect(Math.abs(unitNamed(word)!.factor / expected - 1)).toBeLessThanOrEqual(tolerance);
  });

  test('standard gravity is 9.80665 m/s²', () => expect(standardGravity).toBe(9.80665));

  test.each([['degC', 100, 373.15], ['degF', 32, 273.15], ['degF', 212, 373.15]])('%s %d is %d K', (word, value, kelvin) => {
    expect(toSI(value, unitNamed(word)!)).toBeCloseTo(kelvin, 10);
  });
});

describe('the library js-quantities', () => {
  // Our word, the library's word, the library's SI word.
  const pairs = [
    ['mm', 'mm', 'm'], ['cm', 'cm', 'm'], ['km', 'km', 'm'], ['in', 'in', 'm'], ['ft', 'ft', 'm'], ['yd', 'yd', 'm'],
    ['g', 'g', 'kg'], ['t', 'tonne', 'kg'], ['lb', 'lb', 'kg'], ['short-ton', 'short-ton', 'kg'],
    ['N', 'N', 'N'], ['daN', 'daN', 'N'], ['kN', 'kN', 'N'], ['lbf', 'lbf', 'N'], ['kgf', 'kg*gee', 'N'],
    ['deg', 'deg', 'rad'], ['min', 'min', 's'], ['h', 'h', 's'], ['days', 'day', 's'], ['weeks', 'week', 's'],
    ['m/min', 'm/min', 'm/s'], ['km/h', 'km/h', 'm/s'], ['ft/min', 'ft/min', 'm/s'], ['mph', 'mph', 'm/s'],
    ['kJ', 'kJ', 'J'], ['ft-lbf', 'ft*lbf', 'J'], ['ft2', 'ft2', 'm2'], ['kPa', 'kPa', 'Pa'], ['lb/ft2', 'lbf/ft2', 'Pa'],
    ['kN/m', 'kN/m', 'N/m'], ['lbf/ft', 'lbf/ft', 'N/m'], ['g/m', 'g/m', 'kg/m'], ['lb/ft', 'lb/ft', 'kg/m'],
  ] as const;
  // The library types some factors with few digits: pound-force 4.448222, short ton 907.1847.
  test.each(pairs)('%s', (ours, theirs, si) => {
    const library = Qty(`1 ${theirs}`).to(si).scalar;
    expect(Math.abs(toSI(1, unitNamed(ours)!) / library - 1)).toBeLessThan(2e-7);
  });

  test.each([[-40], [0], [65], [100]])('%d degC and its degF', (celsius) => {
    const fahrenheit = Qty(`${celsius} tempC`).to('tempF').scalar;
    expect(toSI(fahrenheit, unitNamed('degF')!)).toBeCloseTo(toSI(celsius, unitNamed('degC')!), 9);
    expect(toSI(celsius, unitNamed('degC')!)).toBeCloseTo(Qty(`${celsius} tempC`).to('tempK').scalar, 9);
  });
});

test('every unit has a positive factor and words of its own', () => {
  const words = units.flatMap((unit) => unit.words);
  expect(new Set(words).size).toBe(words.length);
  for (const unit of units) expect(unit.factor).toBeGreaterThan(0);
});
