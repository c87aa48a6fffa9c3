import { describe, expect, test } from 'vitest';
import { asGiven, isUnknown } from '../../src-core/mechanics/derivation.ts';
import { armyEstimate } from '../../src-core/mechanics/army-estimate.ts';
import { blockLoad } from '../../src-core/mechanics/block-load.ts';
import { chokerLimit } from '../../src-core/mechanics/choker-limit.ts';
import { deadmanHoldingPower, deadmanSoilFactor } from '../../src-core/mechanics/deadman-holding-power.ts';
import { deadmanLength } from '../../src-core/mechanics/deadman-length.ts';
import { dragShare } from '../../src-core/mechanics/drag-resistance.ts';
import { gradeAngle } from '../../src-core/mechanics/grade-angle.ts';
import { gradeResistance } from '../../src-core/mechanics/grade-resistance.ts';
import { mireFactor } from '../../src-core/mechanics/mire-resistance.ts';
import { picketHold } from '../../src-core/mechanics/picket-hold.ts';
import { sheaveEfficiency } from '../../src-core/mechanics/sheave-efficiency.ts';
import { shackleLimitGradeS } from '../../src-core/mechanics/shackle-limit-grade-s.ts';
import { shackleSideLoadShare } from '../../src-core/mechanics/shackle-side-load-share.ts';
import { softShackleShare } from '../../src-core/mechanics/soft-shackle-strength.ts';
import { surfaceShare } from '../../src-core/mechanics/surface-resistance.ts';
import { fibreSlingTable } from '../../src-core/trade/fibre-sling-table.ts';
import { given, readSI, worked } from '../support/read-worked.ts';

const lbf = (value: number): number => readSI(`${value} lbf`, 'load');

// Rigging catalogues, the same table in two; published figures are cut off behind the second decimal.
test.each([
  [0, 2, 2], [10, 1.99, 1.9924], [20, 1.97, 1.9696], [30, 1.93, 1.9319], [40, 1.87, 1.8794], [45, 1.84, 1.8478], [50, 1.81, 1.8126], [60, 1.73, 1.7321],
  [70, 1.64, 1.6383], [80, 1.53, 1.5321], [90, 1.41, 1.4142], [100, 1.29, 1.2856], [110, 1.15, 1.1472], [120, 1, 1], [130, 0.84, 0.8452], [135, 0.76, 0.7654],
  [140, 0.68, 0.684], [150, 0.52, 0.5176], [160, 0.35, 0.3473], [170, 0.17, 0.1743], [180, 0, 0],
])('load on a block at %d° is %d of the line pull as published, %d exactly', (angle, published, exact) => {
  const { amount } = worked(blockLoad({ T: given('1 lbf', 'tension'), θ: given(`${angle} deg`, 'angle') }));
  expect(Math.abs(amount.high / lbf(1) - published)).toBeLessThanOrEqual(0.01);
  expect(amount.high / lbf(1)).toBeCloseTo(exact, 4);
});

// Winching guide, p. 8: share of the weight by per cent of grade.
test.each([[20, 20], [40, 37], [60, 51], [80, 62], [100, 71]])('a grade of %d %% resists with %d %% of the weight', (grade, share) => {
  const angle = worked(gradeAngle({ G: given(`${grade} %`, 'needed share') }));
  const { amount } = worked(gradeResistance({ W: given('100 lbf', 'weight'), α: asGiven(angle) }));
  expect(Math.abs(amount.high / lbf(1) - share)).toBeLessThanOrEqual(0.6);
});

// US Army lesson 63H34F01: runs of its method.
describe('the army estimate', () => {
  const run = (resistance: number, pull: number) => {
    const estimate = armyEstimate(given(`${resistance} lbf`, 'resistance'), given(`${pull} lbf`, 'line pull'));
    if (isUnknown(estimate)) return estimate.unknown.says;
    return estimate.rounds.map((round) => [round.parts, Math.round(round.tackleResistance.amount.high / lbf(1)), Math.round(round.fallLineForce.amount.high / lbf(1)), round.isWithinPull]);
  };
  test('11,400 lb with 8,000 lb of pull: two parts, 6,270 lb', () => expect(run(11_400, 8_000)).toEqual([[2, 1_140, 6_270, true]]));
  test('24,000 lb with 9,500 lb: three parts give 9,600 lb and fail, four give 7,800 lb', () => {
    expect(run(24_000, 9_500)).toEqual([[3, 4_800, 9_600, false], [4, 7_200, 7_800, true]]);
  });
  test('45,000 lb with 20,000 lb: three parts, 18,000 lb', () => expect(run(45_000, 20_000)).toEqual([[3, 9_000, 18_000, true]]));
  test('a load that no tackle moves gets no number', () => expect(run(100_000, 10_000)).toMatch(/no tackle of up to 12 parts/));
});

// AS 2741: body, and working limit in tonnes; the pin is 8, 11, 13, 16, 22, 29 mm.
test.each([[6, 0.5], [10, 1], [11, 1.5], [13, 2], [19, 4.7], [25, 8.5]])('a grade S shackle of %d mm works at %d t', (body, tonnes) => {
  expect(worked(shackleLimitGradeS({ D: given(`${body} mm`, 'diameter') })).amount.low).toBeCloseTo(tonnes * 9806.65, 6);
});
test.each([12, 16, 22, 24.9, 0.019])('a grade S shackle of %d mm has no figure: nothing is read between rows', (body) => {
  expect(shackleLimitGradeS({ D: given(`${body} mm`, 'diameter') })).toHaveProperty('unknown.says', expect.stringContaining('no row of the grade S table'));
});

// WAC 296-155-33905, figure 17, and shackle catalogues: in line to 5°, 6 to 45°, 46 to 90°.
test.each([[0, 1], [5, 1], [6, 0.7], [30, 0.7], [45, 0.7], [46, 0.5], [90, 0.5]])('a shackle pulled %d° from in line keeps %d of its limit', (angle, share) => {
  expect(worked(shackleSideLoadShare({ α: given(`${angle} deg`, 'angle') })).amount).toEqual({ low: share, high: share });
});
test('over 90° is refused', () => expect(isUnknown(shackleSideLoadShare({ α: given('91 deg', 'angle') }))).toBe(true));

// NAVEDTRA 14251: pickets in undisturbed loam.
test.each([['single', 700], ['1-1-1', 1_800], ['3-2-1', 4_000]])('pickets set %s hold %d lb in loam', (form, pounds) => {
  const hold = picketHold(form, 'loam');
  if (isUnknown(hold)) throw new Error(hold.unknown.says);
  expect(hold.amount.low).toBeCloseTo(lbf(pounds), 6);
});
test.each([['single', 'sand'], ['single', undefined], ['2-1', 'loam']])('pickets set %s in %s have no figure', (form, soil) => expect(isUnknown(picketHold(form, soil))).toBe(true));

// TM 5-5420-278-10, WP 0035 table 9.
describe('a buried log', () => {
  const at = (depth: string, run: string, soil = 'loam') =>
    worked(deadmanHoldingPower({ D: given(depth, 'usable length'), n: given(run, 'count'), k: deadmanSoilFactor(soil) }));
  const psf = (value: number) => readSI(`${value} lb/ft2`, 'pressure');
  test.each([['3 ft', '1', 950], ['4 ft', '2', 2_200], ['5 ft', '4', 4_100], ['6 ft', '3', 5_800], ['7 ft', '1', 5_100]])('%s deep, pulled 1:%s, holds %d lb/ft²', (depth, run, value) => {
    expect(at(depth, run).amount.low).toBeCloseTo(psf(value), 6);
  });
  test('between rows the weaker one counts', () => expect(at('4 ft 11 in', '2.9').amount.low).toBeCloseTo(psf(2_200), 6));
  test('five times that in hardpan, half in wet or sandy soil', () => {
    expect(at('5 ft', '3', 'hardpan or rock').amount.low).toBeCloseTo(psf(20_000), 6);
    expect(at('5 ft', '3', 'fine-grained wet or sandy').amount.low).toBeCloseTo(psf(2_000), 6);
  });
  test('a soil that the table does not name has no figure', () => expect(isUnknown(deadmanSoilFactor('peat'))).toBe(true));
  test('below the table nothing more is counted, and the result says so', () => {
    expect(at('9 ft', '6').amount.low).toBeCloseTo(psf(8_400), 6);
    expect(at('9 ft', '6').notes).toHaveLength(2);
    expect(at('7 ft', '4').notes).toEqual([]);
  });
  test('shallower than 3 ft or steeper than 1:1 is refused', () => {
    expect(isUnknown(deadmanHoldingPower({ D: given('2.9 ft', 'usable length'), n: given('2', 'count'), k: given('1', 'count') }))).toBe(true);
    expect(isUnknown(deadmanHoldingPower({ D: given('3 ft', 'usable length'), n: given('0.9', 'count'), k: given('1', 'count') }))).toBe(true);
  });
  test('a log longer than five diameters is remarked on', () => {
    const length = (width: string) => worked(deadmanLength({ F: given('20,000 lbf', 'load'), HP: given('4,000 lb/ft2', 'pressure'), b: given(width, 'diameter') }));
    expect(length('1 ft').notes).toHaveLength(1);
    expect(length('1.5 ft').notes).toEqual([]);
  });
});

// 29 CFR 1918 app. II table 2: the choker column is half the vertical one, within its rounding to 50 lb.
test.each(fibreSlingTable.rows.map((row) => [row.size, row] as const))('a choker of %s fibre rope', (_, row) => {
  const { amount } = worked(chokerLimit({ WLL: { ...given('1 lbf', 'working limit'), amount: { low: row.vertical_N, high: row.vertical_N } } }));
  expect(Math.abs(amount.low - row.choker_N) / lbf(1)).toBeLessThanOrEqual(50.001);
});

// Tables from which a figure is taken: each end with its source.
describe('figures from tables', () => {
  const ends = (value: ReturnType<typeof surfaceShare>) => {
    if (isUnknown(value)) return value.unknown.says;
    return [value.amount.low, value.amount.high];
  };
  test.each([
    ['hard-road', 1 / 25, 1 / 10], ['grass', 1 / 7, 1 / 3], ['hard-wet-sand', 1 / 6, 1 / 6], ['gravel', 1 / 5, 1 / 3], ['soft-dry-sand', 1 / 4, 0.85], ['snow', 0.1, 0.3], ['bog', 1 / 2, 1],
  ])('%s takes from %d to %d of the weight', (surface, low, high) => expect(ends(surfaceShare(surface))).toEqual([low, high]));
  test('a surface that no source names has no figure', () => expect(ends(surfaceShare('lava'))).toMatch(/no source gives the resistance of the surface `lava`/));
  test.each([['wheels', 1], ['hubs', 2], ['fenders', 2], ['frame', 3], ['cab', 3]])('mired to the %s: %d times the weight', (depth, factor) => expect(ends(mireFactor(depth))).toEqual([factor, factor]));
  test('mired to an unknown depth has no figure', () => expect(isUnknown(mireFactor('roof'))).toBe(true));
  test('wheels that do not turn take two thirds of what they carry', () => expect(dragShare().amount.high).toBeCloseTo(2 / 3, 12));
  test.each([['diamond', 1, 1.7], ['button', 1.7, 2.3]])('a soft shackle with a %s knot breaks at %d to %d of its line', (knot, low, high) => expect(ends(softShackleShare(knot))).toEqual([low, high]));
  // Handbooks: rollers lose 2 to 4 %; common practice counts up to 5 %, which is the careful end.
  test.each([['plain', 0.9, 0.917], ['bushed', 0.917, 1 / 1.045], ['roller', 0.95, 1 / 1.02], [undefined, 0.9, 1 / 1.02]])('a sheave on %s bearings passes from %d to %d', (bearing, low, high) => {
    expect(ends(sheaveEfficiency(bearing))).toEqual([low, high]);
  });
  test('another bearing has no figure', () => expect(isUnknown(sheaveEfficiency('magnetic'))).toBe(true));
  test('another knot has no figure', () => expect(isUnknown(softShackleShare('bowline'))).toBe(true));
});
