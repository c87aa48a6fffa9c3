import { describe, expect, test } from 'vitest';
import { armyEstimate } from '../../src-core/mechanics/army-estimate.ts';
import { checkWorkedExample } from '../../src-core/mechanics/check-worked-example.ts';
import { deadmanHoldingPower } from '../../src-core/mechanics/deadman-holding-power.ts';
import { isUnknown, unknown, type Given } from '../../src-core/mechanics/derivation.ts';
import { dragShare } from '../../src-core/mechanics/drag-resistance.ts';
import { drumTable, type DrumInputs } from '../../src-core/mechanics/drum-table.ts';
import { allSources, showAmount, showGiven } from '../../src-core/mechanics/explain.ts';
import { layerAtLineOut } from '../../src-core/mechanics/layer-at-line-out.ts';
import { lengthOnPartialLayer } from '../../src-core/mechanics/length-on-partial-layer.ts';
import { pullByLayer } from '../../src-core/mechanics/pull-by-layer.ts';
import { putNumbersIn } from '../../src-core/mechanics/put-numbers-in.ts';
import { readInput } from '../../src-core/mechanics/read-input.ts';
import { sheaveEfficiency } from '../../src-core/mechanics/sheave-efficiency.ts';
import { softShackleShare } from '../../src-core/mechanics/soft-shackle-strength.ts';
import { solveLinear } from '../../src-core/mechanics/solve-linear.ts';
import { standOffFrom } from '../../src-core/mechanics/stand-off-distance.ts';
import { strengthOfWorstPlace, worstPlace } from '../../src-core/mechanics/strength-of-worst-place.ts';
import { surfaceShare } from '../../src-core/mechanics/surface-resistance.ts';
import { taperSchedule } from '../../src-core/mechanics/taper-schedule.ts';
import { weakestLink } from '../../src-core/mechanics/weakest-link.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { between, exactly } from '../../src-core/units/amount.ts';
import { given, worked } from '../support/read-worked.ts';

const missing = unknown({ key: 'x', says: 'it is not given', help: 'give it' });

describe('of values between two ends', () => {
  test('the longest line is the one that may be the longest', () => {
    const long = given('8 to 12 m', 'distance');
    const other = given('10 to 11 m', 'distance');
    expect(worked(standOffFrom([long, other])).amount).toEqual({ low: 8, high: 12 });
    expect(worked(standOffFrom([other, long])).amount).toEqual({ low: 8, high: 12 });
  });

  test('the weakest place is as weak as the weakest may be, and as strong as the weakest at best', () => {
    const wide = { name: 'splice', strength: given('70 to 90 kN', 'breaking strength') };
    const narrow = { name: 'lug', strength: given('75 to 80 kN', 'breaking strength') };
    for (const places of [[wide, narrow], [narrow, wide]] as const) {
      expect(worked(strengthOfWorstPlace(places)).amount).toEqual({ low: 70_000, high: 80_000 });
      expect(worstPlace(places)).toBe(wide);
    }
    const same = { name: 'eye', strength: given('70 kN', 'breaking strength') };
    expect(worstPlace([same, wide])).toBe(same);
  });

  test('the army\'s estimate takes the highest resistance and the lowest pull', () => {
    // 20 kN over 9 kN is 2.2, so three parts: (20 + 0.1 · 20 · 2) / 3 = 8 kN.
    const estimate = armyEstimate(given('10 to 20 kN', 'resistance'), given('9 to 12 kN', 'line pull'));
    if (isUnknown(estimate)) throw new Error(estimate.unknown.says);
    expect(estimate.answer.parts).toBe(3);
    expect(estimate.answer.fallLineForce.amount.low).toBeCloseTo(8_000, 9);
  });
});

test('the army\'s estimate goes as far as twelve parts, and says where it gives up', () => {
  // With n parts the fall line carries R (0.9 + 0.1 n) / n: for 56 kN 10.18 kN with eleven, 9.8 kN with twelve.
  const twelve = armyEstimate(given('56 kN', 'resistance'), given('10 kN', 'line pull'));
  if (isUnknown(twelve)) throw new Error(twelve.unknown.says);
  expect([twelve.partsFirst.amount.low, twelve.answer.parts, twelve.rounds.length]).toEqual([6, 12, 7]);
  expect(twelve.answer.fallLineForce.amount.low).toBeCloseTo(9_800, 9);
  const place = { chunk: {}, start: 3, end: 8 };
  const pull: Given = { ...given('10 kN', 'line pull'), origin: { from: 'written', place } };
  // 57.2 kN would put 10.01 kN on twelve.
  expect(armyEstimate(given('57.2 kN', 'resistance'), pull)).toHaveProperty('unknown.place', place);
  expect(armyEstimate(given('57.2 kN', 'resistance'), { ...pull, origin: { from: 'constant', source: sources.geometry } })).toHaveProperty('unknown.place', undefined);
});

describe('weakest link', () => {
  const kN = (text: string) => given(`${text} kN`, 'working limit');
  const factor = (low: number, high = low): Given => ({ amount: between(low, high), kind: 'count', origin: { from: 'constant', source: sources.geometry } });
  test('a factor that may be nothing says nothing; a factor of one is one', () => {
    for (const none of [factor(0), factor(0, 5)]) expect(weakestLink([{ name: 'bow', breaking: kN('10'), factor: none }]).byWorkingLimit.weakestKnown).toBeUndefined();
    expect(weakestLink([{ name: 'bow', breaking: kN('10'), factor: factor(1) }]).byWorkingLimit.weakestKnown?.workingLimit?.force_N).toBe(10_000);
  });
  test('what is missing is said by its name', () => {
    const { byBreaking, byWorkingLimit } = weakestLink([{ name: 'bow', workingLimit: kN('10') }, { name: 'tail', breaking: kN('20') }]);
    expect(byBreaking.unjudged).toEqual([{ name: 'bow', causes: [expect.objectContaining({ key: 'breaking strength of bow', says: 'breaking strength of `bow` is not given' })] }]);
    expect(byWorkingLimit.unjudged).toEqual([{ name: 'tail', causes: [expect.objectContaining({ key: 'working limit of tail', says: 'working limit of `tail` is not given' })] }]);
  });
  test('of equals the first', () => expect(weakestLink([{ name: 'a', workingLimit: kN('10') }, { name: 'b', workingLimit: kN('10') }]).byWorkingLimit.weakestKnown?.name).toBe('a'));
});

describe('taper schedule', () => {
  const steps = (strands: string) => taperSchedule(given('240 mm', 'length'), given(strands, 'count'));
  test('from 4 strands to 64, by fours', () => {
    for (const [strands, count] of [['4', 1], ['16', 4], ['64', 16]] as const) expect(steps(strands)).toHaveLength(count);
    for (const strands of ['68', '65', '2', '6']) expect(isUnknown(steps(strands))).toBe(true);
  });
  test('the refusal stands where the strands were written', () => {
    const place = { chunk: {}, start: 1, end: 2 };
    const ten = given('10', 'count');
    expect(taperSchedule(given('240 mm', 'length'), { ...ten, origin: { from: 'written', place } })).toHaveProperty('unknown.place', place);
    expect(taperSchedule(given('240 mm', 'length'), { ...ten, origin: { from: 'constant', source: sources.geometry } })).toHaveProperty('unknown.place', undefined);
  });
});

test('wheels that do not turn take two thirds at both ends', () => expect(dragShare().amount).toEqual(exactly(2 / 3)));

test('the buried log\'s table ends at 7 ft, and the remark says so', () => {
  const deep = worked(deadmanHoldingPower({ D: given('9 ft', 'usable length'), n: given('5', 'count'), k: given('5', 'count') }));
  expect(deep.notes).toEqual(['the table ends at 7 ft; nothing more is counted below that', 'the table ends at a slope of 1:4; nothing more is counted for a flatter pull']);
  // Five times loam is the most that a soil holds.
  expect(deadmanHoldingPower({ D: given('5 ft', 'usable length'), n: given('3', 'count'), k: given('5.5', 'count') })).toHaveProperty('unknown.says', expect.stringContaining('holds up to 5'));
});

describe('linear equations', () => {
  test('without any there is nothing to find', () => expect(solveLinear([], [])).toEqual({ unknowns: [] }));
  test('fewer than unknowns leave one open', () => expect(solveLinear([[1, 2]], [3])).toEqual({ undetermined: 1 }));
  test('equations that differ by rounding noise are one equation, at any size', () => {
    expect(solveLinear([[1, 1], [1, 1 + 1e-12]], [1, 2])).toEqual({ undetermined: 1 });
    expect(solveLinear([[1e6, 1e6], [1e6, 1e6 + 1e-5]], [1, 2])).toEqual({ undetermined: 1 });
  });
  test('small numbers are not noise by themselves', () => expect(solveLinear([[1e-10]], [2e-10])).toEqual({ unknowns: [2] }));
  test('a surplus equation may miss by a millionth of the largest number', () => {
    expect(solveLinear([[1e6], [1e6]], [1e6, 1e6 + 0.5])).toEqual({ unknowns: [1] });
    expect(solveLinear([[1e6], [1e6]], [1e6, 1e6 + 10])).toMatchObject({ contradicted: 1 });
  });
});

describe('drum', () => {
  const inputs: DrumInputs = {
    barrel: given('64 mm', 'diameter'), width: given('235 mm', 'length'), diameter: given('10 mm', 'diameter'), length: given('30 m', 'length'),
    ratedPull: given('42 kN', 'line pull'), ratedLayer: given('1', 'count'), flange: given('165 mm', 'diameter'),
  };
  const rowsOf = (more: Partial<DrumInputs>) => {
    const table = drumTable({ ...inputs, ...more });
    if (isUnknown(table)) throw new Error(table.unknown.says);
    return table.rows;
  };
  const refusalOf = (more: Partial<DrumInputs>): unknown => {
    const table = drumTable({ ...inputs, ...more });
    return isUnknown(table) ? table.unknown.key : 'known';
  };
  // 23 wraps on two layers take π · 23 · 2 · (64 + 20) mm = 12.139 m.
  const twoLayers_m = Math.PI * 23 * 2 * 0.084;

  test('the longest that the line may be makes the layers', () => {
    expect(rowsOf({ length: given('12 m', 'length') })).toHaveLength(2);
    expect(rowsOf({ length: given('12 to 12.2 m', 'length') })).toHaveLength(3);
  });
  test('so does the thinnest that the barrel may be: with 62 mm two layers take 11.85 m', () => {
    expect(rowsOf({ length: given('12 m', 'length'), barrel: given('62 to 64 mm', 'diameter') })).toHaveLength(3);
  });
  test('a line that may end before the layer is full does not fill it', () => {
    expect(rowsOf({ length: given(`${twoLayers_m} m`, 'length') }).map((row) => row.partial)).toEqual([false, false]);
    expect(rowsOf({ length: given(`12 m to ${twoLayers_m} m`, 'length') }).map((row) => row.partial)).toEqual([false, true]);
    expect(rowsOf({ length: given(`${twoLayers_m * (1 - 1e-10)} m`, 'length') }).at(-1)!.partial).toBe(false);
  });
  test('line of half a metre lies on one layer', () => expect(rowsOf({ length: given('0.5 m', 'length') }).map((row) => row.partial)).toEqual([true]));
  test('where there may be no line or no barrel there is no table', () => {
    for (const more of [{ length: given('0 m', 'length') }, { length: given('0 to 5 m', 'length') }, { barrel: given('0 to 64 mm', 'diameter') }]) expect(refusalOf(more)).toBe('drum-table: nothing to wind');
  });
  test('a hundred layers are a table, one more is a slip of the pen', () => {
    // One wrap a layer: π · 100 · (64 + 1000) mm = 334.27 m.
    const narrow = given('10 mm', 'length');
    expect(rowsOf({ width: narrow, length: given('334.2 m', 'length') })).toHaveLength(100);
    expect(refusalOf({ width: narrow, length: given('334.3 m', 'length') })).toBe('drum-table: too many layers');
  });
  test('without a length the layers are those that surely fit', () => {
    // (165 − 64) / 2 mm below the flange take five layers, (155 − 64) / 2 mm four.
    expect(rowsOf({ length: missing })).toHaveLength(5);
    expect(rowsOf({ length: missing, flange: given('155 to 165 mm', 'diameter') })).toHaveLength(4);
  });

  const wound = { w: given('23', 'count'), B: inputs.barrel, d: inputs.diameter };
  test('a trace of line too much is not too much, a thousandth is', () => {
    const out = (x_m: number) => layerAtLineOut({ ...wound, L: given('30 m', 'length'), x: given(`${x_m} m`, 'length') });
    expect(out(30 * (1 + 1e-13))).toHaveProperty('unknown.says', 'the whole line is out, so no layer is in use');
    expect(out(30.03)).toHaveProperty('unknown.says', 'more line is out than there is');
    expect(out(30 * (1 - 1e-13))).toHaveProperty('unknown.says', 'the whole line is out, so no layer is in use');
    expect(worked(out(29.99)).amount).toEqual(exactly(1));
  });
  test('a layer that has just been reached holds nothing yet', () => {
    const on = (length_m: number) => lengthOnPartialLayer({ ...wound, L: given(`${length_m} m`, 'length'), n: given('3', 'count') });
    expect(worked(on(twoLayers_m)).amount.low).toBeCloseTo(0, 12);
    expect(worked(on(twoLayers_m * (1 - 1e-13))).amount).toEqual(exactly(0));
    expect(on(12.1)).toHaveProperty('unknown.says', 'the line ends on a layer below this one');
  });
});

describe('a worked example', () => {
  const source = sources.geometry;
  const inputs = { F_1: '20,000 lbf', B: '10 in', d: '1 in', n: '2' };
  // 20,000 · 11 / 13 = 16,923.08 lbf.
  test('is shown in its own unit, with how far it is off', () => {
    const check = checkWorkedExample(pullByLayer as never, { inputs, expected: '17,000 lbf', tolerance: 0.01, source });
    expect(check).toMatchObject({ expected: '17,000 lbf', got: '16,923 lbf', within: true });
    expect(check.difference).toBeCloseTo(76.923 / 17_000, 6);
  });
  test('is shown as a mass where the source gives one, and with both ends where there are two', () => {
    const got = (n: string, expected: string) => checkWorkedExample(pullByLayer as never, { inputs: { ...inputs, n }, expected, tolerance: 0.01, source }).got;
    // 16,923.08 · 0.45359237 = 7,676.18 kg.
    expect(got('2', '7,676 kg')).toBe('7,676.2 kg');
    expect(got('1 to 2', '7,676 to 9,072 kg')).toBe('7,676.2 to 9,071.8 kg');
    expect(got('1 to 2', '16,923 to 20,000 lbf')).toBe('16,923 to 20,000 lbf');
    expect(got('2', '75 kN')).toBe('75.278 kN');
  });
  test('is measured at the worse of its two ends', () => {
    const check = checkWorkedExample(pullByLayer as never, { inputs: { ...inputs, n: '1 to 2' }, expected: '16,923.0769 lbf to 25,000 lbf', tolerance: 0.01, source });
    expect(check).toMatchObject({ within: false });
    expect(check.difference).toBeCloseTo(0.2, 6);
  });
  test('that cannot be worked is not within', () => {
    expect(checkWorkedExample(pullByLayer as never, { inputs: { ...inputs, n: '0' }, expected: '1 lbf', tolerance: 1, source })).toMatchObject({ within: false, difference: undefined });
    expect(checkWorkedExample(pullByLayer as never, { inputs, expected: 'much', tolerance: 1, source }).within).toBe(false);
  });
});

describe('numbers as they are shown', () => {
  test('things are whole, factors keep their digits, and a range opens outward', () => {
    expect(showAmount(exactly(12), 'count')).toBe('12');
    expect(showAmount(exactly(1.71), 'count')).toBe('1.71');
    expect(showAmount({ low: 1.711, high: 2 }, 'count')).toBe('1.71 to 2');
    expect(showAmount({ low: 1, high: 1.711 }, 'count')).toBe('1 to 1.72');
    expect(showAmount(exactly(1.715), 'count', { careful: 'down' })).toBe('1.71');
    expect(showAmount(exactly(1.711), 'count', { careful: 'up' })).toBe('1.72');
  });
  test('what was written keeps its digits', () => {
    expect(showGiven(given('22.123456 mm', 'diameter'))).toBe('22.123456 mm');
    expect(showGiven(given('1.5 to 2 m', 'length'))).toBe('1.5 to 2 m');
    // A third of an inch has no end: nine digits are enough.
    expect(showGiven(given('1/3 in', 'diameter'))).toBe('0.333333333 in');
  });
  test('what nobody wrote is rounded to the nearest when it is a figure, to the careful side when it was derived', () => {
    const force: Given = { amount: exactly(1_239), kind: 'breaking strength', origin: { from: 'constant', source: sources.geometry } };
    expect(showGiven(force)).toBe('1.24 kN');
    const half = worked(pullByLayer({ F_1: given('1,239 N', 'line pull'), B: given('1 m', 'diameter'), d: given('1 mm', 'diameter'), n: given('1', 'count') }));
    expect(showGiven({ amount: half.amount, kind: half.kind, origin: { from: 'derived', derivation: half } })).toBe('1.23 kN');
  });
});

test('a formula keeps the symbol it is for, and what stands to the left of the sign', () => {
  const values = new Map([['a', { text: '2', range: false }], ['b', { text: '3', range: false }]]);
  expect(putNumbersIn('a = a b', values, '6')).toBe('a = 2 × 3 = 6');
  expect(putNumbersIn('f(a) = a + b', values, '5')).toBe('f(a) = 2 + 3 = 5');
});

test('the sources of a result include those of what was assumed and of constants', () => {
  const from = (origin: Given['origin']): Given => ({ amount: exactly(1), kind: 'count', origin });
  const of = (more: Given): string[] => allSources(worked(pullByLayer({ F_1: given('1 kN', 'line pull'), B: given('1 m', 'diameter'), d: given('1 mm', 'diameter'), n: more }))).map((source) => source.key);
  const own = of(given('1', 'count'));
  expect(own).not.toContain('nist-sp-811');
  expect(of(from({ from: 'constant', source: sources['nist-sp-811'] }))).toEqual([...own, 'nist-sp-811']);
  expect(of(from({ from: 'assumed', source: sources['nist-sp-811'], means: 'write it' }))).toEqual([...own, 'nist-sp-811']);
});

test.each([['sheave', sheaveEfficiency('plain')], ['knot', softShackleShare('diamond')], ['surface', surfaceShare('bog')]])('a figure of the %s table names its source', (_, value) => {
  expect(value).toHaveProperty('origin.source.title', expect.any(String));
});

test('a mass where a force is meant is a weight, and keeps no unit of mass', () => {
  // 2,000 kg · 9.80665.
  const weight = readInput('W', { kind: 'weight', meaning: 'weight' }, '2,000 kg');
  expect(weight).toMatchObject({ amount: exactly(19_613.3), origin: { from: 'written' } });
  expect((weight as Given).origin).not.toHaveProperty('unit');
  expect(readInput('W', { kind: 'weight', meaning: 'weight' }, '2 kN')).toHaveProperty('origin.unit.symbol', 'kN');
  expect(readInput('n', { kind: 'count', meaning: 'wraps' }, '3')).not.toHaveProperty('origin.unit');
});
