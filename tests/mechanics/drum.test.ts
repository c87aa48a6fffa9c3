import { describe, expect, test } from 'vitest';
import '../../src-core/mechanics/drum-calculations.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { isUnknown, unknown, type Derivation, type Derived, type Value } from '../../src-core/mechanics/derivation.ts';
import { drumTable, type DrumInputs } from '../../src-core/mechanics/drum-table.ts';
import { readInput } from '../../src-core/mechanics/read-input.ts';
import { showResult } from '../../src-core/mechanics/explain.ts';
import type { Kind } from '../../src-core/units/dimension.ts';

const given = (text: string, kind: Kind) => {
  const read = readInput('x', { kind, meaning: 'a value' }, text);
  if (typeof read === 'string') throw new Error(read);
  return read;
};

/** Works a calculation by name: what comes out as it is shown, or the sentence why nothing does. */
function work(name: string, inputs: Record<string, string>): string {
  const calculation = calculations().get(name)!;
  const values = Object.fromEntries(Object.entries(calculation.symbols).map(([symbol, definition]) => [symbol, given(inputs[symbol]!, definition.kind)]));
  const result = calculation(values as Record<string, Value>);
  return isUnknown(result) ? result.unknown.says : showResult(result);
}

const show = (derived: Derived): string => (isUnknown(derived) ? `? ${derived.unknown.says}` : showResult(derived));
const known = (derived: Derived): Derivation => {
  if (isUnknown(derived)) throw new Error(derived.unknown.says);
  return derived;
};

// A drum of 64 mm barrel, 165 mm flange and 230 mm width with line of 10 mm; each number can be followed by hand:
// 23 wraps; layers of π 23 74 mm = 5.35 m, π 23 94 mm = 6.79 m, π 23 114 mm = 8.24 m, π 23 134 mm = 9.68 m.
const drum = { B: '64 mm', d: '10 mm', w: '23' };

test.each<[string, Record<string, string>, string]>([
  ['wraps-per-layer', { W: '230 mm', d: '10 mm' }, '23'],
  ['wraps-per-layer', { W: '229 mm', d: '10 mm' }, '22'],
  ['wraps-per-layer', { W: '0.3 m', d: '0.1 m' }, '3'],
  ['wraps-per-layer', { W: '9 mm', d: '10 mm' }, 'the drum is narrower than the line is thick, so no wrap fits'],
  ['layer-length', { ...drum, n: '1' }, '5.35 m'],
  ['layer-length', { ...drum, n: '4' }, '9.68 m'],
  ['length-through-layer', { ...drum, n: '2' }, '12.14 m'],
  ['length-on-partial-layer', { ...drum, L: '15 m', n: '3' }, '2.86 m'],
  ['length-on-partial-layer', { ...drum, L: '12 m', n: '3' }, 'the line ends on a layer below this one'],
  ['layers-that-fit', { A: '165 mm', B: '64 mm', d: '10 mm', f: '10 mm' }, '4'],
  ['layers-that-fit', { A: '165 mm', B: '64 mm', d: '10 mm', f: '10.6 mm' }, '3'],
  ['layers-that-fit', { A: '80 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, '0'],
  ['layers-that-fit', { A: '64 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 'the flange is not larger than the barrel'],
  ['drum-capacity-by-layers', { W: '230 mm', A: '165 mm', B: '64 mm', d: '10 mm', f: '10 mm' }, '30.05 m'],
  ['drum-capacity-by-layers', { W: '230 mm', A: '80 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 'not one layer fits below the flange with this freeboard'],
  ['drum-capacity-with-fill', { φ: '70 to 90 %', W: '230 mm', h: '40 mm', B: '64 mm', d: '10 mm' }, '21.04 to 27.06 m'],
  ['line-left-on-drum', { L: '30 m', x: '18 m' }, '12 m'],
  ['line-left-on-drum', { L: '30 m', x: '31 m' }, 'more line is out than there is'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '18 m' }, '2'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '17.8 m' }, '3'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '0 m' }, '4'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '29.999 m' }, '1'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '30 m' }, 'the whole line is out, so no layer is in use'],
  ['layer-at-line-out', { ...drum, L: '30 m', x: '17 to 18 m' }, '2 to 3'],
  ['pull-at-line-out', { ...drum, F_1: '42 kN', L: '30 m', x: '18 m' }, '33 kN'],
  ['length-kept-by-wraps', { ...drum, k: '0' }, '0 mm'],
  ['length-kept-by-wraps', { ...drum, k: '10' }, '2.33 m'],
  ['length-kept-by-wraps', { ...drum, k: '25' }, '5.94 m'],
  ['wraps-left', { ...drum, y: '2.33 m' }, '10'],
  ['wraps-left', { ...drum, y: '0 m' }, '0'],
  ['usable-length', { L: '30 m', K: '2.33 m' }, '27.67 m'],
  ['usable-length', { L: '2 m', K: '2.33 m' }, 'the line is shorter than the wraps to keep'],
  ['speed-by-layer', { v_1: '4 m/min', B: '64 mm', d: '10 mm', n: '3' }, '6.2 m/min'],
  // The third layer is wound at 114 mm, the first at 74 mm: 11.4 and 7.4. Eight minutes of 30 m are 240 m.
  ['speed-on-first-layer', { v_r: '11.4 m/min', r: '3', B: '64 mm', d: '10 mm' }, '7.4 m/min'],
  ['line-wound-in-run', { v: '30 m/min', τ: '8 min' }, '240 m'],
  ['line-out-for-pull', { ...drum, F: '42 kN', F_1: '42 kN', L: '30 m' }, '24.66 m'],
  ['line-out-for-pull', { ...drum, F: '33 kN', F_1: '42 kN', L: '30 m' }, '17.87 m'],
  ['line-out-for-pull', { ...drum, F: '20 kN', F_1: '42 kN', L: '30 m' }, '0 mm'],
  ['line-out-for-pull', { ...drum, F: '43 kN', F_1: '42 kN', L: '30 m' }, 'the winch does not have this pull on any layer'],
  ['freeboard', { A: '165 mm', B: '64 mm', d: '10 mm', n: '4' }, '10 mm'],
  ['freeboard', { A: '165 mm', B: '64 mm', d: '10 mm', n: '6' }, '-9.5 mm'],
])('%s of %o is %s', (name, inputs, expected) => {
  expect(work(name, inputs)).toBe(expected);
});

test('a freeboard below nothing says that line stands above the flange', () => {
  const freeboard = calculations().get('freeboard')!;
  const at = (n: string) => known(freeboard({ A: given('165 mm', 'diameter'), B: given('64 mm', 'diameter'), d: given('10 mm', 'diameter'), n: given(n, 'count') }));
  expect(at('6').notes).toEqual(['the outermost layer stands above the flange']);
  expect(at('5').notes).toEqual([]);
});

describe('drum table', () => {
  const inputs: DrumInputs = {
    barrel: given('64 mm', 'diameter'),
    width: given('230 mm', 'length'),
    diameter: given('10 mm', 'diameter'),
    length: given('30 m', 'length'),
    ratedPull: given('42 kN', 'line pull'),
    ratedLayer: given('1', 'count'),
    flange: given('165 mm', 'diameter'),
  };
  const missing = unknown({ key: 'x', says: 'it is not given', help: 'give it' });
  const rows = (of: DrumInputs): string[] => {
    const table = drumTable(of);
    if (isUnknown(table)) return [`? ${table.unknown.says}`];
    return table.rows.map((row) => `${row.layer}: ${show(row.wraps)}, ${show(row.lengthOnLayer)}, ${show(row.lengthThrough)}, ${show(row.pull)}${row.partial ? ', partial' : ''}`);
  };

  test('layer by layer', () => {
    expect(rows(inputs)).toEqual(['1: 23, 5.35 m, 5.35 m, 42 kN', '2: 23, 6.79 m, 12.14 m, 33 kN', '3: 23, 8.24 m, 20.38 m, 27.2 kN', '4: 23, 9.62 m, 30.06 m, 23.1 kN, partial']);
  });

  test('a winch rated on a higher layer pulls more on the first', () => {
    expect(rows({ ...inputs, ratedPull: given('33.06383 kN', 'line pull'), ratedLayer: given('2', 'count') })[0]).toBe('1: 23, 5.35 m, 5.35 m, 42 kN');
  });

  test('a layer that is just full is not partial', () => {
    expect(rows({ ...inputs, length: given(`${Math.PI * 23 * 2 * 0.084} m`, 'length') })).toEqual(['1: 23, 5.35 m, 5.35 m, 42 kN', '2: 23, 6.79 m, 12.14 m, 33 kN']);
  });

  test('the lengths on all layers add up to the line', () => {
    const table = drumTable(inputs);
    if (isUnknown(table)) throw new Error(table.unknown.says);
    expect(table.rows.reduce((sum, row) => sum + known(row.lengthOnLayer).amount.low, 0)).toBeCloseTo(30, 9);
  });

  test('an unknown rating makes the pulls unknown and nothing else', () => {
    expect(rows({ ...inputs, ratedPull: missing })[1]).toBe('2: 23, 6.79 m, 12.14 m, ? it is not given');
  });

  test('an unknown length leaves the layers that fit below the flange', () => {
    expect(rows({ ...inputs, length: missing })).toHaveLength(5);
    expect(rows({ ...inputs, length: missing }).at(-1)).not.toContain('partial');
    expect(rows({ ...inputs, length: missing, flange: undefined })).toEqual(['? it is not given']);
    const table = drumTable({ ...inputs, length: missing });
    expect(isUnknown(table) ? '' : show(table.wrapsOnDrum)).toBe('? it is not given');
  });

  test.each(['barrel', 'width', 'diameter'] as const)('an unknown %s makes the table unknown', (key) => {
    expect(rows({ ...inputs, [key]: missing })).toEqual(['? it is not given']);
  });

  test('absurd lengths do not make endless tables', () => {
    expect(rows({ ...inputs, length: given('90 km', 'length') })[0]).toContain('more than 100 layers');
    expect(rows({ ...inputs, barrel: given('0 mm', 'diameter') })[0]).toContain('above zero');
    expect(rows({ ...inputs, diameter: given('0 mm', 'diameter') })[0]).toContain('above');
  });
});
