import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drumCapacityByLayers } from '../../src-core/mechanics/drum-capacity-by-layers.ts';
import { drumCapacityHandbook } from '../../src-core/mechanics/drum-capacity-handbook.ts';
import { asGiven, isUnknown, type Derived } from '../../src-core/mechanics/derivation.ts';
import { helixShorteningEstimate } from '../../src-core/mechanics/helix-shortening-estimate.ts';
import { lengthThroughLayer } from '../../src-core/mechanics/length-through-layer.ts';
import { pullByLayer } from '../../src-core/mechanics/pull-by-layer.ts';
import { pullOnFirstLayer } from '../../src-core/mechanics/pull-on-first-layer.ts';
import { readInput } from '../../src-core/mechanics/read-input.ts';
import { spliceShortening } from '../../src-core/mechanics/splice-shortening.ts';
import { blockLoadFactorTable } from '../../src-core/trade/block-load-factor-table.ts';
import { builtInPractice, practiceValue } from '../../src-core/trade/built-in-practice.ts';
import { buryOptionsTable } from '../../src-core/trade/bury-options-table.ts';
import { checkedTables, checkTable, checkTables } from '../../src-core/trade/check-tables.ts';
import { deadmanTable } from '../../src-core/trade/deadman-table.ts';
import { fibreSlingTable } from '../../src-core/trade/fibre-sling-table.ts';
import { fidChart } from '../../src-core/trade/fid-chart.ts';
import { layerPullTable } from '../../src-core/trade/layer-pull-table.ts';
import { nylonDoubleBraidTable } from '../../src-core/trade/nylon-double-braid-table.ts';
import { picketTable } from '../../src-core/trade/picket-table.ts';
import { gradeAShackleOfSize, shackleRRC271Table } from '../../src-core/trade/shackle-rr-c-271-table.ts';
import { gradeSShackleOfBody, shackleGradeSTable } from '../../src-core/trade/shackle-grade-s-table.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { wireRopeSheaveLossTable } from '../../src-core/trade/wire-rope-sheave-loss-table.ts';
import type { Kind } from '../../src-core/units/dimension.ts';
import { standardGravity } from '../../src-core/units/unit-table.ts';

const given = (text: string, kind: Kind) => {
  const read = readInput('x', { kind, meaning: 'a value' }, text);
  if (typeof read === 'string') throw new Error(read);
  return read;
};
const value = (derived: Derived): number => {
  if (isUnknown(derived)) throw new Error(derived.unknown.says);
  expect(derived.amount.high).toBe(derived.amount.low);
  return derived.amount.low;
};
const within = (got: number, expected: number, tolerance: number): void => expect(Math.abs(got / expected - 1)).toBeLessThanOrEqual(tolerance);

describe('tables', () => {
  const folder = new URL('../../src-core/trade/tables/', import.meta.url);

  test('every table is checked and well formed', () => {
    expect(checkTables()).toEqual([]);
    for (const file of readdirSync(folder).sort()) {
      const name = file.replace('.json', '');
      if (checkedTables.includes(name)) expect(checkTable(name, JSON.parse(readFileSync(new URL(file, folder), 'utf8')))).toEqual([]);
    }
  });

  test('a table with a broken row, an unknown source or a missing field is found', () => {
    expect(checkTable('fid-chart', { about: 'x', source: 'fid-chart', rows: [{ size: '1', diameter_in: -1, fid_in: 21, shortFid_in: 5 }] })[0]).toContain('rows.0.diameter_in');
    expect(checkTable('picket-holdfasts', { about: 'x', source: 'nobody', rows: [{ form: '1-1-1', holding_lb: 1 }] })[0]).toContain('source');
    expect(checkTable('picket-holdfasts', { about: 'x', source: 'navedtra-14251-pickets', rows: [] })).toHaveLength(1);
    expect(checkTable('no-such-table', {})).toHaveLength(1);
  });

  test('every source has its own key and a title', () => {
    for (const [key, source] of Object.entries(sources)) {
      expect(source.key).toBe(key);
      expect(source.title.length).toBeGreaterThan(10);
    }
  });
});

describe('US Army TM 9-2320-430-10 (2009), WP 0082 table 1', () => {
  // The document's own numbers, typed here a second time so that a slip in the table is seen.
  test.each([[1, 20_000], [2, 18_173], [3, 16_663], [4, 15_361], [5, 14_254]])('layer %i pulls %i lb', (layer, pull_lb) => {
    const row = layerPullTable.rows.find((each) => each.layer === layer)!;
    within(row.linePull_N, pull_lb * 4.4482216152605, 1e-12);
    // Any drum with this ratio of 2 d to B + d: here line of 1/2 in.
    const d = 12.7e-3;
    const B = (2 * d) / layerPullTable.twoLineDiametersByBarrelAndLine - d;
    const F_n = pullByLayer({ F_1: given('20,000 lbf', 'line pull'), B: given(`${B} m`, 'diameter'), d: given('1/2 in', 'diameter'), n: given(String(layer), 'count') });
    within(value(F_n), row.linePull_N, 0.0015);
    within(value(pullOnFirstLayer({ F_r: asGiven(F_n), r: given(String(layer), 'count'), B: given(`${B} m`, 'diameter'), d: given('1/2 in', 'diameter') })), layerPullTable.rows[0]!.linePull_N, 1e-12);
  });
});

describe('Handbook of Oceanographic Winch, Wire and Cable Technology, p. 12-5', () => {
  // L[ft] = 0.2618 W h (B + h) / d², inches, worked with the handbook's own constant.
  test.each([
    [20, 2, 10, 0.5],
    [9, 1.5, 2.5, 0.375],
    [36, 6, 24, 1],
  ])('W %d in, h %d in, B %d in, d %d in', (W, h, B, d) => {
    const feet = (0.2618 * W * h * (B + h)) / d ** 2;
    const inch = (number: number, kind: Kind) => given(`${number} in`, kind);
    const capacity = drumCapacityHandbook({ W: inch(W, 'length'), h: inch(h, 'length'), B: inch(B, 'diameter'), d: inch(d, 'diameter') });
    within(value(capacity), feet * 0.3048, 1e-5);
    // Whole wraps and layers fill these drums, so layer by layer comes to the same.
    within(value(drumCapacityByLayers({ W: inch(W, 'length'), A: inch(B + 2 * h, 'diameter'), B: inch(B, 'diameter'), d: inch(d, 'diameter'), f: inch(0, 'needed length') })), feet * 0.3048, 1e-5);
    within(value(lengthThroughLayer({ w: given(String(W / d), 'count'), B: inch(B, 'diameter'), d: inch(d, 'diameter'), n: given(String(h / d), 'count') })), feet * 0.3048, 1e-5);
  });
});

describe('maker\'s published splicing instruction "Fid information"', () => {
  test.each([
    ['1/4', 5.5], ['5/16', 6.75], ['3/8', 7.75], ['7/16', 9.5], ['1/2', 11], ['9/16', 12.25], ['5/8', 14], ['3/4', 16], ['7/8', 19], ['1', 21],
  ])('a fid for %s in is %d in, near 21 d', (size, fid_in) => {
    const row = fidChart.rows.find((each) => each.size === size)!;
    within(row.fid_m, fid_in * 0.0254, 1e-12);
    within(row.diameter_m, given(`${size} in`, 'diameter').amount.low, 1e-12);
    // The chart rounds to what is sold; it is never more than 7 % off.
    within(21 * row.diameter_m, row.fid_m, 0.07);
  });
});

describe('published buries', () => {
  test.each([
    ['locked eye', 'HMPE', 72, 'toss-103-105'],
    ['straight-bury eye, 3.5 fids', 'HMPE', 73.5, 'break-tests-3-5-fids'],
    ['straight-bury eye, 3 fids', 'HMPE', 63, 'maker-12-strand-eye'],
    ['tuck-bury eye', 'HMPE', 31.5, 'tuck-bury-hmpe'],
    ['locked eye', 'polyester', 24, 'toss-103-105'],
    ['locked eye', 'nylon', 24, 'toss-103-105'],
  ])('%s in %s: %d d', (splice, material, bury_d, key) => {
    const row = buryOptionsTable.rows.find((each) => each.splice === splice && each.materials.includes(material))!;
    expect([row.bury_d, row.source.key]).toEqual([bury_d, key]);
  });

  test('Toss p. 104 and the splicer\'s measurement bound the shortening; field practice and the helix estimate lie between', () => {
    const share = practiceValue('splice-shortening')!;
    const s = spliceShortening({ T: given('18 in', 'length'), c: { amount: share.amount, kind: 'needed share', origin: { from: 'assumed', source: share.source, means: share.means } } });
    if (isUnknown(s)) throw new Error(s.unknown.says);
    const four_in = 4 * 0.0254;
    expect(s.amount.low).toBeLessThan(four_in);
    expect(four_in).toBeLessThan(s.amount.high);
    const estimate = helixShorteningEstimate({ 'α₁': given('22 deg', 'angle'), σ: given('25 to 30 %', 'share') });
    if (isUnknown(estimate)) throw new Error(estimate.unknown.says);
    within(estimate.amount.low, 0.16, 0.03);
    within(estimate.amount.high, 0.22, 0.03);
  });
});

describe('shackles', () => {
  test.each([[6, 8, 0.5], [10, 11, 1], [11, 13, 1.5], [13, 16, 2], [19, 22, 4.7], [25, 29, 8.5]])('AS 2741 grade S, body %d mm: pin %d mm, %d t', (body, pin, tonnes) => {
    const row = gradeSShackleOfBody(body / 1000)!;
    within(row.pin_m, pin / 1000, 1e-12);
    within(row.wll_N, tonnes * 9806.65, 1e-12);
  });

  test.each([['3/16', 0.333], ['1/4', 0.5], ['3/8', 1], ['1/2', 2], ['5/8', 3.25], ['3/4', 4.75], ['1', 8.5], ['2', 35]])('RR-C-271 grade A, %s in: %d short tons (from memory)', (size, shortTons) => {
    const row = gradeAShackleOfSize(given(`${size} in`, 'diameter').amount.low)!;
    within(row.wll_N, shortTons * 907.18474 * standardGravity, 1e-12);
  });

  test('a size between two listed ones has no rating', () => {
    expect(gradeSShackleOfBody(0.012)).toBeUndefined();
    expect(gradeAShackleOfSize(0.012)).toBeUndefined();
  });

  test('ratings grow with size', () => {
    for (const rows of [shackleGradeSTable.rows, shackleRRC271Table.rows]) rows.reduce((before, row) => (expect(row.wll_N).toBeGreaterThan(before.wll_N), row));
  });
});

describe('other tables, against figures typed from their documents', () => {
  const lb = 4.4482216152605;

  test('rigging catalogues: 2 cos(θ/2) fits the published block factors within 0.01', () => {
    expect(blockLoadFactorTable.rows).toHaveLength(21);
    for (const row of blockLoadFactorTable.rows) expect(Math.abs(row.factor - 2 * Math.cos(row.angle_rad / 2))).toBeLessThan(blockLoadFactorTable.tolerance);
  });

  test.each([[3, '1:1', 950], [3, '1:4', 1500], [5, '1:3', 4000], [7, '1:2', 7000], [7, '1:4', 8400]])('TM 5-5420-278-10 WP 0035 table 9: %i ft, %s holds %i lb/ft²', (feet, slope, pounds) => {
    const row = deadmanTable.rows.find((each) => each.slope === slope && Math.abs(each.depth_m - feet * 0.3048) < 1e-9)!;
    within(row.holding_Pa, (pounds * lb) / 0.3048 ** 2, 1e-12);
  });

  test.each([['single', 700], ['1-1-1', 1800], ['3-2-1', 4000]])('NAVEDTRA 14251: %s pickets hold %i lb', (form, pounds) => {
    within(picketTable.rows.find((row) => row.form === form)!.holding_N, pounds * lb, 1e-12);
  });

  test.each([['1/2', 550, 250, 550], ['3/4', 1100, 550, 1100], ['1', 1800, 900, 1800], ['2', 6200, 3100, 6200]])('29 CFR 1918 app. II table 2: %s in', (size, vertical, choker, basket60) => {
    const row = fibreSlingTable.rows.find((each) => each.size === size)!;
    within(row.vertical_N, vertical * lb, 1e-12);
    within(row.choker_N, choker * lb, 1e-12);
    within(row.basket_N[60], basket60 * lb, 1e-12);
  });

  test.each([[3, 33.6], [6, 131], [10, 322], [15, 680]])('UFC 4-159-03 table 6-8: %d in around breaks at %d kips', (inches, kips) => {
    within(nylonDoubleBraidTable.rows.find((row) => Math.abs(row.circumference_m - inches * 0.0254) < 1e-9)!.averageBreak_N, kips * 1000 * lb, 1e-12);
  });

  test.each([[6, 21], [10, 14], [20, 9]])('hoist manual table B: wire over D/d %i loses %i %%', (ratio, percent) => {
    within(wireRopeSheaveLossTable.rows.find((row) => row.ratio === ratio)!.loss, percent / 100, 1e-12);
  });
});

describe('built-in practice', () => {
  test.each<[string, string | undefined, number, number, string]>([
    ['keep-wraps', 'HMPE', 10, 10, 'practice-keep-wraps-hmpe'],
    ['keep-wraps', 'steel', 5, 5, 'alberta-ohs-299'],
    ['bury', 'HMPE', 72, 72, 'toss-103-105'],
    ['bury', 'nylon', 24, 24, 'toss-103-105'],
    ['taper', 'HMPE', 21, 21, 'maker-12-strand-eye'],
    ['splice-efficiency', undefined, 0.9, 1, 'maker-12-strand-eye'],
    ['line-factor', undefined, 3, 3, 'ufc-4-159-03-3-7'],
    ['design-factor', 'shackle', 5, 5, 'asme-b30-26-1-2'],
    ['wet-loss', 'nylon', 0.15, 0.15, 'ufc-4-159-03-3-7'],
    ['spooling-tension', undefined, 500 * 4.4482216152605, 500 * 4.4482216152605, 'tm-9-2320-280-10-spooling'],
    ['fill-factor', undefined, 0.7, 0.9, 'sae-j706-2017-fill'],
    ['overload-share', undefined, 0.75, 0.75, 'navedtra-14160-overload'],
  ])('%s for %s', (key, material, low, high, source) => {
    const found = practiceValue(key, material)!;
    within(found.amount.low, low, 1e-12);
    within(found.amount.high, high, 1e-12);
    expect(found.source.key).toBe(source);
  });

  test('what is not published for a material is not given', () => {
    expect(practiceValue('bury', 'manila')).toBeUndefined();
    expect(practiceValue('bury')).toBeUndefined();
    expect(practiceValue('rope-on-rope')).toBeUndefined();
  });

  test('no key stands twice for the same thing', () => {
    const keys = builtInPractice.map((each) => `${each.key} ${each.for ?? ''}`);
    expect(new Set(keys).size).toBe(keys.length);
  });
});
