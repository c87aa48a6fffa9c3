import { describe, expect, test } from 'vitest';
import { planCutsOf, recommended, type CutPlan, type CutQuestion, type PlannedDamage } from '../../src-core/mechanics/cut-planner.ts';

/** Sound line holds 10, a new eye and the old outboard end 9; an eye uses 1 m, and a cut stays half a metre clear of damage. */
const question = (length_m: number, damages: readonly PlannedDamage[], more: Partial<CutQuestion> = {}): CutQuestion => ({
  length_m, damages, eyeUses_m: 1, clear_m: 0.5, leastPiece_m: 1, leastMain_m: 1, soundStrength_N: 10, eyeStrength_N: 9, outboardStrength_N: 9, outboardFrom_m: length_m - 1, ...more,
});
const damage = (from_m: number, to_m: number, strength_N?: number): PlannedDamage => ({ from_m, to_m, strength_N });
const plans = (q: CutQuestion): string[] =>
  planCutsOf(q).map((plan) => `${[plan.main, ...plan.extensions].map((piece) => Number(piece.length_m.toPrecision(9))).join(' + ')} at ${plan.weakest_N} with ${plan.splices}`).sort();

describe('an inboard splice keeps clear of damage that stays', () => {
  test('and of the next behind it, in whatever order they were written', () => {
    // The bad place ends at 11, so the piece begins at 11.5; its eye would lie on 12 to 12.5, so at 13; then on 13.8 to 14.2, so at
    // 14.7: 30 − 14.7 − 1 m are left. Inboard of it 10 − 0.5 − 1 m.
    const near = damage(12, 12.5, 7);
    const next = damage(13.8, 14.2, 7);
    for (const kept of [[near, next], [next, near]]) expect(plans(question(30, [damage(10, 11), ...kept]))).toEqual(['8.5 + 14.3 at 9 with 2', '8.5 at 9 with 1']);
  });
  test('an outboard splice likewise', () => {
    // The cut would lie at 19.5, its eye on 18.6 to 18.9, so at 18.1; then on 17.2 to 17.5, so at 16.7: 15.7 m.
    const near = damage(18.6, 18.9, 7);
    const next = damage(17.2, 17.5, 7);
    for (const kept of [[near, next], [next, near]]) expect(plans(question(21, [damage(20, 21), ...kept]))).toEqual(['15.7 at 9 with 1']);
  });
});

test('a new eye does not fit where the old outboard splice begins', () => {
  // From 18.5 on 1.5 m are left, and the last of them is the old splice.
  expect(plans(question(20, [damage(17.5, 18.5)], { clear_m: 0, leastPiece_m: 0.25 }))).toEqual(['16.5 at 9 with 1']);
  expect(plans(question(20, [damage(16.5, 17.5)], { clear_m: 0, leastPiece_m: 0.25 }))).toEqual(['15.5 + 1.5 at 9 with 2', '15.5 at 9 with 1']);
});

test('a short line without damage needs no eye and is left alone', () => {
  expect(plans(question(1.5, [], { outboardFrom_m: 0.5 }))).toEqual(['1.5 at 9 with 0']);
});

test('a piece that its two eyes use up is none', () => {
  expect(plans(question(30, [damage(10, 12), damage(14, 16)], { clear_m: 0, leastPiece_m: 0 }))).toEqual(['9 + 13 at 9 with 2', '9 at 9 with 1']);
});

test('with several pieces the longest go first, and the one with the old end costs a splice less', () => {
  // Main 5 − 1 m; pieces of 8 − 2 and 5 − 2 m for two splices each, and one of 9 − 1 m for one.
  expect(plans(question(30, [damage(5, 6), damage(14, 15), damage(20, 21)], { clear_m: 0 }))).toEqual(['4 + 6 + 3 + 8 at 9 with 6', '4 + 6 + 8 at 9 with 4', '4 + 8 at 9 with 2', '4 at 9 with 1']);
});

describe('a piece is as strong as what lies on it', () => {
  test('and no weaker for what lies on another', () => {
    const [longest] = planCutsOf(question(30, [damage(5, 6, 7), damage(10, 12)])).filter((plan) => plan.main.length_m > 8 && plan.extensions.length === 1);
    expect([longest!.main.strength_N, longest!.extensions[0]!.strength_N, longest!.weakest_N]).toEqual([7, 9, 7]);
  });
  test('at its very end too', () => {
    // Left alone the line holds 6; cut half a metre inboard of its old splice at the most, 28 m hold 9.
    expect(plans(question(30, [damage(30, 30, 6)]))).toEqual(['28 at 9 with 1', '30 at 6 with 0']);
  });
});

describe('recommended', () => {
  const plan = (main_m: number, extension_m: number, weakest_N: number, splices: number): CutPlan => {
    const piece = (length_m: number) => ({ from_m: 0, to_m: length_m, cutInboard: false, cutOutboard: false, length_m, strength_N: weakest_N });
    return { main: piece(main_m), extensions: extension_m === 0 ? [] : [piece(extension_m)], total_m: main_m + extension_m, weakest_N, splices };
  };
  test('reach that fewer splices give needs no more of them', () => {
    const [few, many] = [plan(9, 0, 9, 1), plan(9, 17, 9, 2)];
    for (const order of [[few, many], [many, few]]) expect(recommended(order, { total_m: 5 })).toBe(few);
    expect(recommended([few, many], { total_m: 20 })).toBe(many);
  });
  test('nothing reaches: of the strong enough ones that reach as far, the one with fewer splices', () => {
    const [few, many] = [plan(12, 8, 9, 2), plan(13, 7, 9, 3)];
    const weak = plan(30, 0, 4, 0);
    for (const order of [[few, many, weak], [weak, many, few]]) expect(recommended(order, { weakest_N: 8, total_m: 29 })).toBe(few);
  });
  test('nothing is strong enough: the strongest, then the longest, then the one with fewer splices', () => {
    const [weak, short, few, many] = [plan(30, 0, 4, 0), plan(9, 0, 9, 1), plan(12, 8, 9, 2), plan(13, 7, 9, 3)];
    for (const order of [[weak, short, few, many], [many, few, short, weak]]) expect(recommended(order, { weakest_N: 20 })).toBe(few);
  });
});
