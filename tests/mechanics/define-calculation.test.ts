import { describe, expect, test } from 'vitest';
import { calculations, defineCalculation, type CalculationDefinition } from '../../src-core/mechanics/define-calculation.ts';
import { asGiven, isUnknown, restsOnAssumption, unknown, writtenInputs, writtenPlaces, type Given } from '../../src-core/mechanics/derivation.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { between, exactly } from '../../src-core/units/amount.ts';
import type { Kind } from '../../src-core/units/dimension.ts';
import { given, worked } from '../support/read-worked.ts';

const define = <const S extends string>(more: Pick<CalculationDefinition<S>, 'name' | 'symbols' | 'compute'> & Partial<CalculationDefinition<S>>) =>
  defineCalculation<S>({ means: 'a number of this test', symbol: 'y', kind: 'count', formula: 'y', sources: [sources.geometry], worked: [], noExample: 'only a test', ...more });
const number = (low: number, high = low, kind: Kind = 'count'): Given => ({ amount: between(low, high), kind, origin: { from: 'constant', source: sources.geometry } });
const places = [1, 2, 3].map((start) => ({ chunk: {}, start, end: start + 1 }));
const at = (value: Given, place: number): Given => ({ ...value, origin: { from: 'written', place: places[place]! } });
const assumed = (value: Given, place?: number): Given => ({ ...value, origin: { from: 'assumed', source: sources.geometry, means: 'write it', place: place === undefined ? undefined : places[place]! } });

const product = define({ name: 'test-product', symbols: { a: { meaning: 'first', kind: 'count', min: 0, max: 10 }, b: { meaning: 'second', kind: 'count' } }, compute: ({ a, b }) => a * b });
const difference = define({ name: 'test-difference', symbols: { a: { meaning: 'first', kind: 'count' }, b: { meaning: 'second', kind: 'count' } }, compute: ({ a, b }) => a - b });

describe('ranges are computed at every corner', () => {
  test('of a product and of a difference', () => {
    // 2 · 5 and 3 · 7; 2 − 7 and 3 − 5.
    expect(worked(product({ a: number(2, 3), b: number(5, 7) })).amount).toEqual({ low: 10, high: 21 });
    expect(worked(difference({ a: number(2, 3), b: number(5, 7) })).amount).toEqual({ low: -5, high: -2 });
    expect(worked(product({ a: number(3), b: number(5, 7) })).amount).toEqual({ low: 15, high: 21 });
  });
  test('each corner once', () => {
    let times = 0;
    const counted = define({ name: 'test-counted', symbols: { a: { meaning: 'first', kind: 'count' }, b: { meaning: 'second', kind: 'count' } }, compute: ({ a }) => (times++, a) });
    counted({ a: number(1, 2), b: number(3, 4) });
    expect(times).toBe(4);
    times = 0;
    counted({ a: number(1), b: number(3) });
    expect(times).toBe(1);
  });
  test('of a method that itself has two ends', () => {
    const wide = define({ name: 'test-wide', symbols: { a: { meaning: 'first', kind: 'count' } }, compute: ({ a }) => between(a, 3 * a) });
    expect(worked(wide({ a: number(2, 5) })).amount).toEqual({ low: 2, high: 15 });
  });
  test('a remark made at one corner is made once', () => {
    const remarks = define({ name: 'test-remarks', symbols: { a: { meaning: 'first', kind: 'count' } }, compute: ({ a }) => a, notes: ({ a }) => ['always', ...(a > 1 ? ['large'] : [])] });
    expect(worked(remarks({ a: number(1, 2) })).notes).toEqual(['always', 'large']);
  });
});

describe('what cannot be computed has no number', () => {
  test('an unknown input hands on its own cause, the first of several', () => {
    const missing = unknown({ key: 'x', says: 'x is not given', help: 'give it' });
    expect(product({ a: missing, b: unknown({ key: 'z', says: 'z is not given', help: 'give it' }) })).toBe(missing);
    expect(product({ a: number(1), b: missing })).toBe(missing);
  });
  test.each([[NaN, 1], [-Infinity, 1], [1, Infinity], [NaN, NaN]])('%d to %d is not a finite number', (low, high) => {
    expect(product({ a: number(1), b: { ...number(1), amount: { low, high } } })).toHaveProperty('unknown.says', 'second (b) is not a finite number');
  });
  test.each([[0, Infinity], [-Infinity, 0], [NaN, NaN]])('nor is a result of %d to %d', (low, high) => {
    const endless = define({ name: 'test-endless', symbols: { a: { meaning: 'first', kind: 'count' } }, compute: () => ({ low, high }) });
    expect(endless({ a: number(1) })).toHaveProperty('unknown.says', 'a number of this test cannot be computed from these values');
  });
  test('half a strand is none', () => {
    const whole = define({ name: 'test-whole', symbols: { a: { meaning: 'strands', kind: 'count', whole: true } }, compute: ({ a }) => a });
    for (const amount of [number(2, 2.5), number(1.5, 2), number(1.5)]) expect(isUnknown(whole({ a: amount }))).toBe(true);
    expect(isUnknown(whole({ a: number(2, 3) }))).toBe(false);
  });
  test('a range with one end outside is outside', () => {
    expect(isUnknown(product({ a: number(-1, 5), b: number(1) }))).toBe(true);
    expect(isUnknown(product({ a: number(5, 11), b: number(1) }))).toBe(true);
    const above = define({ name: 'test-above', symbols: { a: { meaning: 'first', kind: 'count', above: 0 } }, compute: ({ a }) => a });
    expect(isUnknown(above({ a: number(0, 1) }))).toBe(true);
  });
  test('below a negative end is outside, a trace below it is not', () => {
    const negative = define({ name: 'test-negative', symbols: { a: { meaning: 'first', kind: 'count', min: -5, max: -2 } }, compute: ({ a }) => a });
    expect(isUnknown(negative({ a: number(-6) }))).toBe(true);
    expect(isUnknown(negative({ a: number(-1) }))).toBe(true);
    expect(isUnknown(negative({ a: number(-5 * (1 + 1e-13)) }))).toBe(false);
    expect(isUnknown(negative({ a: number(-2 * (1 - 1e-13)) }))).toBe(false);
  });
  test('the limit is said in the unit that was written', () => {
    const size = define({ name: 'test-size', symbols: { D: { meaning: 'pin', kind: 'diameter', max: 1 } }, compute: ({ D }) => D });
    // 1 m is 39.37 in.
    expect(size({ D: given('40 in', 'diameter') })).toHaveProperty('unknown.says', 'pin (D) is 40 in; the calculation holds up to 39.4 in');
    expect(size({ D: number(2, 2, 'diameter') })).toHaveProperty('unknown.says', 'pin (D) is 2 m; the calculation holds up to 1 m');
  });
});

describe('a refusal stands where the value was written', () => {
  const strict = define({ name: 'test-strict', symbols: { a: { meaning: 'first', kind: 'count', max: 10 }, b: { meaning: 'second', kind: 'count', max: 10 } }, compute: ({ a }) => a, refuse: ({ a, b }) => (a > b ? 'too much' : undefined) });
  const placeOf = (a: Given, b: Given): unknown => {
    const result = strict({ a, b });
    return isUnknown(result) ? result.unknown.place : 'known';
  };
  test('of the value that is out of range', () => {
    expect(placeOf(at(number(1), 0), at(number(11), 1))).toBe(places[1]);
    expect(placeOf(number(11), number(1))).toBeUndefined();
  });
  test('of what it was derived from, the first that was written', () => {
    const eleven = asGiven(product({ a: assumed(number(1)), b: at(number(11), 2) }));
    if (isUnknown(eleven)) throw new Error('known');
    expect(placeOf(eleven, number(1))).toBe(places[2]);
    const again = asGiven(product({ a: number(1), b: eleven }));
    if (isUnknown(again)) throw new Error('known');
    expect(placeOf(again, number(1))).toBe(places[2]);
  });
  test('of the first input, when nothing comes out', () => {
    const endless = define({ name: 'test-nowhere', symbols: { a: { meaning: 'first', kind: 'count' }, b: { meaning: 'second', kind: 'count' } }, compute: () => NaN });
    expect(endless({ a: at(number(1), 0), b: at(number(1), 1) })).toHaveProperty('unknown.place', places[0]);
  });
  test('of the range, when the inputs do not go together; else of the first input', () => {
    expect(placeOf(at(number(5), 0), at(number(1, 6), 1))).toBe(places[1]);
    expect(placeOf(at(number(5), 0), at(number(1), 1))).toBe(places[0]);
  });
});

test('what was measured of one input counts beside an input of which nothing was', () => {
  const one = define({ name: 'test-measured-one', symbols: { a: { meaning: 'first', kind: 'count' }, b: { meaning: 'second', kind: 'count', measured: { from: 2, note: 'not measured there' } } }, compute: ({ a, b }) => a + b });
  expect([worked(one({ a: number(1), b: number(1) })).notes, worked(one({ a: number(1), b: number(3) })).notes]).toEqual([['not measured there'], []]);
});

test('outside what the source measured the result says so, at either end', () => {
  const measured = define({ name: 'test-measured', symbols: { a: { meaning: 'first', kind: 'count', measured: { from: 2, to: 5, note: 'not measured there' } } }, compute: ({ a }) => a });
  const notes = (low: number, high = low) => worked(measured({ a: number(low, high) })).notes;
  expect([notes(2, 5), notes(2), notes(5)]).toEqual([[], [], []]);
  expect([notes(1.9), notes(1.9, 3), notes(5.1), notes(3, 5.1)]).toEqual(Array.from({ length: 4 }, () => ['not measured there']));
  const from = define({ name: 'test-from', symbols: { a: { meaning: 'first', kind: 'count', measured: { from: 2, note: 'below' } } }, compute: ({ a }) => a });
  const to = define({ name: 'test-to', symbols: { a: { meaning: 'first', kind: 'count', measured: { to: 5, note: 'beyond' } } }, compute: ({ a }) => a });
  expect([1, 100].map((value) => worked(from({ a: number(value) })).notes)).toEqual([['below'], []]);
  expect([-100, 6].map((value) => worked(to({ a: number(value) })).notes)).toEqual([[], ['beyond']]);
});

test('a calculation is found by its name, and shows it', () => {
  expect(calculations().get('test-product')).toBe(product);
  expect(product.name).toBe('test-product');
  expect(Object.keys(product)).toContain('name');
});

describe('where a value came from', () => {
  const written = at(number(2), 0);
  const mixed = worked(product({ a: written, b: assumed(number(3), 1) }));
  const deep = worked(difference({ a: asGiven(mixed), b: asGiven(mixed) }));

  test('an unknown is one that has a cause', () => {
    expect(isUnknown(undefined)).toBe(false);
    expect(isUnknown({})).toBe(false);
    expect(isUnknown({ unknown: undefined })).toBe(false);
    expect(isUnknown(unknown({ key: 'x', says: 'x', help: 'x' }))).toBe(true);
  });
  test('it rests on what was assumed, however deep', () => {
    const given = asGiven(deep);
    expect(isUnknown(given) || restsOnAssumption(given)).toBe(true);
    expect(restsOnAssumption(written)).toBe(false);
    const plain = asGiven(worked(product({ a: written, b: number(3) })));
    expect(isUnknown(plain) || restsOnAssumption(plain)).toBe(false);
  });
  test('every place that fed it, each once, with what the figure is there', () => {
    expect(writtenPlaces(deep)).toEqual([places[0], places[1]]);
    expect(writtenInputs(deep)).toEqual([{ place: places[0], means: 'first' }, { place: places[1], means: 'second' }]);
    expect(writtenInputs(written)).toEqual([{ place: places[0], means: 'count' }]);
    expect(writtenInputs(assumed(number(1)))).toEqual([]);
    expect(writtenPlaces(worked(product({ a: number(1), b: number(2) })))).toEqual([]);
    // The same place twice: the nearer meaning stands.
    expect(writtenInputs(worked(difference({ a: written, b: written })))).toEqual([{ place: places[0], means: 'first' }]);
  });
  test('it may be taken under another kind', () => {
    expect(asGiven(mixed, 'needed count')).toMatchObject({ kind: 'needed count', amount: exactly(6) });
    expect(asGiven(mixed)).toMatchObject({ kind: 'count' });
  });
});
