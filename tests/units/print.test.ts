import { describe, expect, test } from 'vitest';
import { between, exactly } from '../../src-core/units/amount.ts';
import type { Dimension } from '../../src-core/units/dimension.ts';
import { printAmount, printNumber, unitFor, type System } from '../../src-core/units/print.ts';
import { toSI, unitNamed } from '../../src-core/units/unit-table.ts';

// One and the same number in every unit: lengths to what a tape shows, the rest to three digits unless the unit has digits of its own.
test.each([
  ['mm', '1,235 mm'], ['cm', '1,234.6 cm'], ['m', '1,234.57 m'], ['km', '1,234.568 km'], ['in', '1,234.6 in'], ['ft', '1,234.6 ft'], ['yd', '1,234.6 yd'],
  ['d', '1,234.6 d'], ['fids', '1,234.57 fids'],
  ['g', '1,230 g'], ['kg', '1,230 kg'], ['t', '1,230 t'], ['lb', '1,230 lb'], ['short-ton', '1,230 short-ton'], ['long-ton', '1,230 long-ton'],
  ['N', '1,230 N'], ['daN', '1,230 daN'], ['kN', '1,230 kN'], ['kgf', '1,230 kgf'], ['lbf', '1,230 lbf'], ['kip', '1,230 kip'],
  ['deg', '1,234.6 deg'], ['rad', '1,234.568 rad'],
  ['s', '1,235 s'], ['min', '1,234.6 min'], ['h', '1,234.6 h'], ['days', '1,235 days'], ['weeks', '1,235 weeks'], ['months', '1,235 months'], ['years', '1,234.6 years'],
  ['m/s', '1,234.57 m/s'], ['m/min', '1,234.6 m/min'], ['km/h', '1,235 km/h'], ['ft/min', '1,234.6 ft/min'], ['mph', '1,235 mph'],
  ['degC', '1,235 degC'], ['degF', '1,235 degF'],
  ['%', '1,230 %'], ['kJ', '1,230 kJ'], ['m2', '1,230 m2'], ['kPa', '1,230 kPa'], ['kN/m', '1,230 kN/m'], ['g/m', '1,230 g/m'],
])('1234.5678 %s', (word, expected) => {
  const unit = unitNamed(word)!;
  expect(printAmount(exactly(toSI(1234.5678, unit)), unit.dimension, { unit })).toBe(expected);
});

// A unit is used from the size beside it: 1 m, 3 ft, 1 kN, 1 kJ, 3 m/s, 1 min, 1 h, 1 day.
test.each<[number, Dimension, System, string]>([
  [0.5, 'length', 'metric', '500 mm'], [0.9994, 'length', 'metric', '999 mm'], [1, 'length', 'metric', '1 m'], [-2, 'length', 'metric', '-2 m'],
  // A trace below a metre is a metre.
  [1 - 5e-10, 'length', 'metric', '1 m'],
  [0.3, 'length', 'us', '11.8 in'], [2.9 * 0.3048, 'length', 'us', '34.8 in'], [3 * 0.3048, 'length', 'us', '3 ft'], [30, 'length', 'us', '98.4 ft'],
  [72, 'diameters', 'us', '72 d'],
  [0.3, 'mass', 'metric', '0.3 kg'], [0.45359237, 'mass', 'us', '1 lb'],
  [999, 'force', 'metric', '999 N'], [1000, 'force', 'metric', '1 kN'], [4.4482216152605, 'force', 'us', '1 lbf'],
  [Math.PI / 15, 'angle', 'metric', '12 deg'],
  [0.4, 'time', 'metric', '0.4 s'], [59, 'time', 'metric', '59 s'], [60, 'time', 'metric', '1 min'], [3599, 'time', 'us', '60 min'], [3600, 'time', 'us', '1 h'], [86_399, 'time', 'metric', '24 h'], [86_400, 'time', 'metric', '1 days'],
  [0.05, 'speed', 'metric', '3 m/min'], [2.9, 'speed', 'metric', '174 m/min'], [3, 'speed', 'metric', '11 km/h'], [2.9, 'speed', 'us', '570.9 ft/min'], [3, 'speed', 'us', '6.71 mph'],
  [338.15, 'temperature', 'metric', '65 degC'], [338.15, 'temperature', 'us', '149 degF'],
  [0.25, 'ratio', 'us', '25 %'],
  [12, 'count', 'metric', '12'],
  [999, 'energy', 'metric', '999 J'], [1000, 'energy', 'metric', '1 kJ'], [1.3558179483314, 'energy', 'us', '1 ft-lbf'],
  [0.4, 'area', 'metric', '0.4 m2'], [0.3048 ** 2, 'area', 'us', '1 ft2'],
  [500, 'pressure', 'metric', '0.5 kPa'], [47.88025898, 'pressure', 'us', '1 lb/ft2'],
  [120, 'stiffness', 'metric', '0.12 kN/m'], [14.59390294, 'stiffness', 'us', '1 lbf/ft'],
  [0.062, 'linear-density', 'metric', '62 g/m'], [1.488163944, 'linear-density', 'us', '1 lb/ft'],
])('%d of %s, %s', (si, dimension, system, expected) => {
  expect(printAmount(exactly(si), dimension, { system })).toBe(expected);
});

test('the unit asked for is used for what it measures, and for nothing else', () => {
  const feet = unitNamed('ft')!;
  expect(printAmount(exactly(0.3048), 'length', { unit: feet })).toBe('1 ft');
  expect(printAmount(exactly(2), 'mass', { unit: feet })).toBe('2 kg');
  expect(unitFor(5, 'count')).toBeUndefined();
});

describe('ranges', () => {
  test.each<[number, number, string]>([
    // The larger end chooses the unit, whichever side it lies on.
    [0.5, 1.5, '0.5 to 1.5 m'],
    [-1.5, 0.5, '-1.5 to 0.5 m'],
    // They open outward: 12.344 m is not above 12.34, and 12.351 m is not within 12.35.
    [12.344, 12.351, '12.34 to 12.36 m'],
    // What differs by rounding noise alone is one number.
    [2, 2 + 1e-12, '2 m'],
  ])('%d m to %d m', (low, high, expected) => expect(printAmount(between(low, high), 'length')).toBe(expected));
});

describe('rounding', () => {
  test.each<[number, 'up' | 'down' | 'nearest', string]>([
    [7.001, 'up', '7.01 m'], [7.009, 'down', '7 m'], [7.004, 'nearest', '7 m'], [7.006, 'nearest', '7.01 m'],
    // 0.07 × 100 is 7.000000000000001 in binary; that is no reason to go to 8.
    [0.07 * 100, 'up', '7 m'],
  ])('%d m, %s', (value, careful, expected) => expect(printAmount(exactly(value), 'length', { careful })).toBe(expected));

  test('below the digits of its unit a length keeps three digits', () => {
    const metres = unitNamed('m')!;
    expect(printAmount(exactly(0.09678), 'length', { unit: metres })).toBe('0.0968 m');
    // From a tenth of a metre on, the two digits behind the point are enough.
    expect(printAmount(exactly(0.1049), 'length', { unit: metres })).toBe('0.1 m');
    expect(printAmount(exactly(0), 'length', { unit: metres })).toBe('0 m');
  });
});

// Three significant digits unless digits behind the point are asked for.
test.each<[string, number, number | undefined, string]>([
  ['a one', 1, undefined, '1.00'], ['a ten', 10, undefined, '10.0'], ['a hundred', 100, undefined, '100'], ['a tenth', 0.1, undefined, '0.100'], ['nothing', 0, undefined, '0.00'],
  ['thousands are marked', 1_234_567, undefined, '1,230,000'], ['and not in front of the first', 123_456, 0, '123,456'], ['nor behind the point', 1234.5678, 4, '1,234.5678'],
  ['a negative', -1234.5, 1, '-1,234.5'], ['minus one', -1, 0, '-1'],
  ['rounded up to a hundred it has no digits behind the point', 99.96, undefined, '100'],
  ['unless they are asked for', 100, 1, '100.0'],
  ['a small negative is not minus nothing', -0.001, 0, '0'],
  ['endless', Infinity, undefined, 'Infinity'],
])('%s', (_, value, decimals, expected) => expect(printNumber(value, 'nearest', decimals)).toBe(expected));

test('things are counted whole', () => {
  expect(printAmount(exactly(2.5), 'count', { careful: 'down' })).toBe('2');
  expect(printAmount(exactly(2.5), 'count', { careful: 'up' })).toBe('3');
});

test('what is left of a difference that should be nothing is nothing, but no kelvin is far below nothing', () => {
  // 0.1 + 0.2 − 0.3 is 5.6e-17 in binary.
  expect(printAmount(exactly(0.1 + 0.2 - 0.3), 'length')).toBe('0 mm');
  expect(printAmount(exactly(0), 'temperature')).toBe('-273 degC');
});

test('a trace above nothing is nothing', () => expect(printNumber(1e-10, 'up', 0)).toBe('0'));
