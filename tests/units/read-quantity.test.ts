import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensions, type Dimension } from '../../src-core/units/dimension.ts';
import { describeDimension, readNumber, readQuantity, type Lexeme } from '../../src-core/units/read-quantity.ts';
import { parseQuantity } from '../../src-core/units/parse-quantity.ts';
import { unitMeant } from '../../src-core/units/unit-meant.ts';
import { unitNamed, unitsOf, unitWords } from '../../src-core/units/unit-table.ts';

/** Lexemes of words that stand one blank apart. */
function lexemesOf(text: string): Lexeme[] {
  let at = 0;
  return text.split(' ').map((word) => {
    const start = at;
    at += word.length + 1;
    return { kind: /^[+-]?[\d.,]+$/.test(word) ? 'number' : word.includes('/') ? 'fraction' : word === '%' ? 'symbol' : 'word', text: word, start, end: start + word.length };
  });
}
const metres = (text: string): number | string => {
  const read = parseQuantity(text);
  return typeof read === 'string' ? read : Number(read.value.toPrecision(12));
};

describe('numbers', () => {
  test.each([['9,500', 9500], ['3/8', 0.375], ['-2.5', -2.5], ['-3/4', -0.75]])('%s', (text, value) => expect(readNumber(text)).toBe(value));
  test('up to a million million, and no further', () => {
    expect(readNumber('1,000,000,000,000')).toBe(1e12);
    expect(readNumber('1000000000000.5')).toBeUndefined();
    expect(readNumber('-1000000000001')).toBeUndefined();
  });
  test('of up to forty digits', () => {
    expect(readNumber('0'.repeat(39) + '7')).toBe(7);
    expect(readNumber('0'.repeat(40) + '7')).toBeUndefined();
  });
  test('a division by nothing is none', () => expect(readNumber('1/0')).toBeUndefined());
});

describe('compounds and fractions', () => {
  // A foot is 0.3048 m, an inch 0.0254 m.
  test.each([
    ['1 ft 6 in', 0.4572], ['0 ft 6 in', 0.1524], ['-2 ft 6 in', -0.762], ['-0 ft 6 in', -0.1524], ['22 ft 0 in', 6.7056], ['22 ft 0.5 in', 6.7183], ['2 m 35 cm', 2.35],
    ['0 3/4 in', 0.01905], ['-1 3/4 in', -0.04445], ['2 h 30 min', 9000],
  ])('%s', (text, si) => expect(metres(text)).toBe(si));
  test.each(['6 in 22 ft', '6 in 2 in', '6 in 0.5 in', '22 ft -6 in', '22 ft 13 in', '22 ft 24 in'])('%s is no compound', (text) => expect(metres(text)).toContain('from the larger unit to the smaller'));
  test.each(['22 ft 6 kg', '65 degC 3 degC', 'kN', '', '3 m/', '3 m / s', '1.5 3/4 in'])('`%s` is no quantity', (text) => expect(metres(text)).toMatch(/^`.*` cannot be read as a number with a unit/));
  test('a fraction of nothing spoils the number before it', () => expect(metres('5 1/0 in')).toContain('too large to be meant'));
});

describe('a fraction with a sign', () => {
  // An inch is 0.0254 m.
  test.each([['6-1/4 in', 0.15875], ['2-1/2 in', 0.0635], ['-2-1/2 in', -0.0635], ['-0-1/2 in', -0.0127], ['-0 1/2 in', -0.0127], ['22 ft 6-1/2 in', 6.8707]])('glued to its whole number is added: %s', (text, si) => expect(metres(text)).toBe(si));
  test.each(['3 -1/2 m', '3 +1/2 m', '3+1/2 m', '22 ft 6 -1/2 in'])('%s is refused, with what to write', (text) => {
    const said = metres(text);
    expect(said).toMatch(/a fraction with a sign stands behind `[36]`|cannot be read/);
    if (!text.startsWith('22')) expect(said).toContain('write `3 1/2`');
  });
  test('is asked for at its place, and offered without the sign', () => {
    const lexemes: Lexeme[] = [{ kind: 'number', text: '3', start: 0, end: 1 }, { kind: 'fraction', text: '-1/2', start: 2, end: 6 }, { kind: 'word', text: 'm', start: 7, end: 8 }];
    expect(readQuantity(lexemes, 0)).toMatchObject({ used: 2, problem: { problem: 'bad-number', span: { start: 0, end: 6 }, replace: '3 1/2' } });
  });
  test('alone is a negative number', () => expect(metres('-1/2 in')).toBe(-0.0127));
  test('joined and apart are the same number', () => {
    fc.assert(fc.property(fc.nat(500), fc.nat(63), fc.integer({ min: 1, max: 64 }), (whole, top, bottom) => metres(`${whole}-${top}/${bottom} in`) === metres(`${whole} ${top}/${bottom} in`)));
  });
});

describe('unit that was meant', () => {
  test.each([
    ['kmh', ['speed'], 'km/h'], ['kph', ['speed'], 'km/h'], ['kilos', ['mass'], 'kg'], ['kilogram', ['mass'], 'kg'], ['Pounds', ['force', 'mass'], 'lb'], ['newtons', ['force', 'mass'], 'N'], ['kilonewton', ['force'], 'kN'],
    ['diameters', ['length', 'diameters'], 'd'], ['diam', ['length', 'diameters'], 'd'], ['pc', ['angle', 'ratio'], '%'], ['metric-tons', ['force', 'mass'], 't'], ['klbf', ['force', 'mass'], 'kip'], ['mtr', ['length'], 'm'],
    ['KN', ['force'], 'kN'], ['M', ['length'], 'm'], ['LBS', ['mass'], 'lbs'], ['feets', ['length'], 'feet'], ['minuts', ['time'], 'minute'], ['kilogramms', ['mass'], 'kg'],
  ] as const)('%s where %s is measured is %s', (word, wanted, meant) => expect(unitMeant(word, wanted)).toBe(meant));
  test.each([['minuts', ['length']], ['kph', ['length']], ['kilos', ['force']], ['klbf', ['mass']], ['MN', ['force']], ['GN', ['force']], ['k', ['force']], ['nm', ['length']], ['kt', ['mass']], ['percnt', ['angle']], ['qwertyuiop', ['mass']]] as const)('%s where %s is measured is nothing', (word, wanted) => expect(unitMeant(word, wanted)).toBeUndefined());
  test('no suggestion crosses to another measure', () => {
    fc.assert(fc.property(fc.constantFrom(...unitWords(), ...Object.keys(dimensions)), fc.nat(3), fc.constantFrom(...'aeklmnst'), fc.constantFrom(...(Object.keys(dimensions) as Dimension[])), (word, at, letter, wanted) => {
      const meant = unitMeant(word.slice(0, at) + letter + word.slice(at), [wanted]);
      return meant === undefined || unitNamed(meant)!.dimension === wanted;
    }), { numRuns: 3000 });
  });
  test('thousands and tons in two words are read as one', () => {
    expect(readQuantity(lexemesOf('20 k lbf'), 0, undefined, ['force'])).toMatchObject({ used: 3, problem: { help: 'write the thousands out: 20,000 lbf', replace: '20,000', replaceSpan: { start: 0, end: 4 } } });
    expect(readQuantity(lexemesOf('4 metric tons'), 0, undefined, ['force', 'mass'])).toMatchObject({ used: 3, problem: { span: { start: 2, end: 13 }, help: 'did you mean `t`?', replace: 't' } });
  });
  test('a ton is asked for where a mass may stand, and not where none may', () => {
    expect(readQuantity(lexemesOf('3 ton'), 0, undefined, ['length'])!.problem).toMatchObject({ problem: 'unknown-unit', help: 'write a unit such as mm, cm, m, in or ft' });
  });
});

describe('texts of their own', () => {
  test('as long as 80 characters', () => {
    expect(metres('3' + ' '.repeat(78) + 'm')).toBe(3);
    expect(metres('3' + ' '.repeat(79) + 'm')).toContain('…');
    expect(metres('x'.repeat(80))).not.toContain('…');
  });
});

describe('what was read, and where', () => {
  test('a bare number ends where it ends, though a word of the line follows', () => {
    expect(readQuantity(lexemesOf('cut 2 1/2 of 12'), 1, (word) => word === 'of')).toEqual({ number: 2.5, used: 2, span: { start: 4, end: 9 } });
    expect(readQuantity(lexemesOf('2 of 12'), 0, (word) => word === 'of')).toEqual({ number: 2, used: 1, span: { start: 0, end: 1 } });
  });
  test('a quantity with its unit', () => {
    expect(readQuantity(lexemesOf('22 ft 6 in bury'), 0)).toEqual({ quantity: { value: expect.closeTo(6.858, 12) as number, dimension: 'length', unit: unitNamed('ft') }, used: 4, span: { start: 0, end: 10 } });
  });
  test('a compound the wrong way round is taken whole', () => {
    expect(readQuantity(lexemesOf('6 in 22 ft'), 0)).toMatchObject({ used: 4, span: { start: 0, end: 10 }, problem: { problem: 'mixed-compound' } });
  });
  test('a word near a unit is offered in its place', () => {
    expect(readQuantity(lexemesOf('3 percnt'), 0)!.problem).toMatchObject({ problem: 'unknown-unit', span: { start: 2, end: 8 }, help: 'did you mean `percent`?', replace: 'percent' });
  });
  test('a word near none is not', () => {
    const far = readQuantity(lexemesOf('3 qwertyuiop'), 0)!.problem!;
    expect(far.help).toMatch(/^write a unit such as/);
    expect(far).not.toHaveProperty('replace');
  });
  test('a ton is asked for by its choices', () => {
    expect(readQuantity(lexemesOf('3 ton'), 0)!.problem).toMatchObject({ problem: 'ambiguous-unit', span: { start: 2, end: 5 }, help: 'write `t`, `short-ton` or `long-ton`' });
  });
  test('where no number stands nothing is read', () => {
    expect(readQuantity(lexemesOf('bury 72 d'), 0)).toBeUndefined();
    expect(readQuantity(lexemesOf('72 d'), 2)).toBeUndefined();
  });
});

test('measures are described with an article that fits', () => {
  expect(describeDimension('angle')).toBe('an angle, such as 12 deg');
  expect(describeDimension('linear-density')).toMatch(/^a linear density, such as/);
  expect(describeDimension('count')).toBe('a plain number');
  expect(describeDimension('diameters')).toBe('a number of diameters, such as 72 d');
});

test('units of a measure', () => {
  expect(unitsOf('stiffness').map((unit) => unit.symbol)).toEqual(['kN/m', 'lbf/ft']);
});

// A year of 365.25 days of 86,400 s; a month is a twelfth of it.
test.each([['year', 31_557_600], ['month', 2_629_800], ['week', 604_800], ['day', 86_400], ['hour', 3600]])('one %s is %d s', (word, seconds) => expect(unitNamed(word)!.factor).toBe(seconds));

// What the SI counts in is one of itself.
test.each(['m', 'kg', 'N', 'rad', 's', 'm/s', 'J', 'm2', 'Pa', 'kg/m'])('one %s is one', (word) => expect(unitNamed(word)!.factor).toBe(1));

test('each piece of a compound is smaller than the one before', () => {
  const whole = parseQuantity('1 yd 2 ft 6 in');
  if (typeof whole === 'string') throw new Error(whole);
  expect(whole.value).toBeCloseTo(66 * 0.0254, 12);
  expect(typeof parseQuantity('1 yd 6 in 2 ft')).toBe('string');
  expect(typeof parseQuantity('1 yd 2 ft 13 in')).toBe('string');
});
