import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { paretoFront } from '../../src-core/mechanics/pareto-front.ts';
import { planCutsOf, recommended, type CutPlan, type CutQuestion, type PlannedDamage } from '../../src-core/mechanics/cut-planner.ts';
import { fortyEntries } from '../support/forty-entries.ts';

/** Whole metres and whole strengths, so that every number can be counted on fingers. */
const question = (length_m: number, damages: readonly PlannedDamage[], more: Partial<CutQuestion> = {}): CutQuestion => ({
  length_m, damages, eyeUses_m: 1, clear_m: 0, leastPiece_m: 1, leastMain_m: 1, soundStrength_N: 10, eyeStrength_N: 9, outboardStrength_N: 9, outboardFrom_m: length_m - 1, ...more,
});
const damage = (from_m: number, to_m: number, strength_N?: number): PlannedDamage => ({ from_m, to_m, strength_N });
const shown = (plan: CutPlan): string => `main ${plan.main.length_m}, extensions ${plan.extensions.map((p) => p.length_m).join(' + ') || 'none'}, weakest ${plan.weakest_N}, splices ${plan.splices}`;
const plans = (q: CutQuestion): string[] => planCutsOf(q).map(shown).sort();

describe('choices worked by hand', () => {
  test('a sound line is left alone', () => {
    expect(plans(question(30, []))).toEqual(['main 30, extensions none, weakest 9, splices 0']);
  });
  test('one bad place: the main line alone, or the far side too as an extension with its old outboard eye', () => {
    expect(plans(question(30, [damage(10, 12)]))).toEqual(['main 9, extensions 17, weakest 9, splices 2', 'main 9, extensions none, weakest 9, splices 1']);
  });
  test('damage that may stay: leave it, or cut it out for strength', () => {
    expect(plans(question(30, [damage(20, 21, 6)]))).toEqual(['main 19, extensions 8, weakest 9, splices 2', 'main 19, extensions none, weakest 9, splices 1', 'main 30, extensions none, weakest 6, splices 0']);
  });
  test('of two stretches between bad places the longer one is taken first', () => {
    expect(plans(question(20, [damage(4, 5), damage(9, 10), damage(19, 20)]))).toEqual([
      'main 3, extensions 2 + 7, weakest 9, splices 5', 'main 3, extensions 7, weakest 9, splices 3', 'main 3, extensions none, weakest 9, splices 1',
    ]);
  });
  test('a splice keeps clear of damage that stays', () => {
    // 5 m of the 30 stay between damage that may stay at 9 to 9.5 and the bad place at 10: the cut moves in front of it.
    expect(plans(question(30, [damage(9, 9.5, 7), damage(10, 12)]))[0]).toContain('main 8,');
  });
  test('a cut stays clear of damage', () => {
    expect(planCutsOf(question(30, [damage(10, 12)], { clear_m: 0.5 }))[1]!.main.to_m).toBe(9.5);
  });
  test('an outboard end that is weak or cannot be told is made again, or lived with', () => {
    expect(plans(question(30, [], { outboardStrength_N: 5 }))).toEqual(['main 28, extensions none, weakest 9, splices 1', 'main 30, extensions none, weakest 5, splices 0']);
    expect(plans(question(30, [], { outboardStrength_N: undefined }))).toEqual(['main 28, extensions none, weakest 9, splices 1']);
  });
  test('damage at the drum goes with the end at the drum, which takes no eye, where that may be dropped', () => {
    expect(plans(question(30, [damage(1, 2)], { leastMain_m: 5 }))).toEqual([]);
    expect(plans(question(30, [damage(1, 2)], { leastMain_m: 5, mayDropInboard: true }))).toEqual(['main 28, extensions none, weakest 9, splices 1']);
    // Farther out it is one choice beside the extension, and better than the short line alone.
    expect(plans(question(30, [damage(10, 12)], { mayDropInboard: true }))).toEqual(['main 18, extensions none, weakest 9, splices 1', 'main 9, extensions 17, weakest 9, splices 2']);
  });
  test('damage at the drum leaves no main line, and too short a line no choice', () => {
    expect(plans(question(30, [damage(0, 1)]))).toEqual([]);
    expect(plans(question(30, [damage(3, 4)], { leastMain_m: 5 }))).toEqual([]);
  });
});

describe('the one that is recommended', () => {
  const both = planCutsOf(question(30, [damage(20, 21, 6)]));
  test('the fewest splices that serve', () => expect(shown(recommended(both, { total_m: 25 })!)).toBe('main 30, extensions none, weakest 6, splices 0'));
  test('strength asked for', () => expect(shown(recommended(both, { weakest_N: 8 })!)).toBe('main 19, extensions none, weakest 9, splices 1'));
  test('strength and reach asked for', () => expect(shown(recommended(both, { weakest_N: 8, total_m: 25 })!)).toBe('main 19, extensions 8, weakest 9, splices 2'));
  test('nothing reaches: the strong enough one that comes nearest', () => expect(shown(recommended(both, { weakest_N: 8, total_m: 29 })!)).toBe('main 19, extensions 8, weakest 9, splices 2'));
  test('no plan, no recommendation', () => expect(recommended([], {})).toBeUndefined());
});

const anyDamage = (length: number): fc.Arbitrary<PlannedDamage> =>
  fc.record({ at: fc.integer({ min: 0, max: length - 1 }), long: fc.integer({ min: 0, max: 3 }), strength: fc.option(fc.integer({ min: 1, max: 9 }), { nil: undefined }), mustGo: fc.boolean() })
    .map(({ at, long, strength, mustGo }) => ({ from_m: at, to_m: Math.min(length, at + long), strength_N: strength, ...(mustGo ? { mustGo } : {}) }));
const small = fc.integer({ min: 4, max: 11 }).chain((length) => fc.tuple(fc.constant(length), fc.array(anyDamage(length), { maxLength: 4 }), fc.integer({ min: 1, max: 2 }), fc.option(fc.integer({ min: 3, max: 10 }), { nil: undefined })));

/** Every way to cut a line at whole metres and to keep or drop what lies between, by trying them all. */
function byBruteForce(q: CutQuestion): number[][] {
  const found: number[][] = [];
  const marks = Array.from({ length: q.length_m - 1 }, (_, i) => i + 1);
  for (let cutSet = 0; cutSet < 1 << marks.length; cutSet++) {
    const cuts = [0, ...marks.filter((_, i) => (cutSet >> i) & 1), q.length_m];
    const pieces = cuts.slice(1).map((to, i) => weigh(q, cuts[i]!, to));
    // The end at the drum as it is, or cut off: at any of the cuts, or right behind its lug.
    const mains = [weigh(q, 0, cuts[1]!, false), ...(q.mayDropInboard === true ? pieces.map((_, i) => weigh(q, cuts[i]!, cuts[i + 1]!, true, true)) : [])];
    for (const [i, main] of mains.entries()) {
      const first = Math.max(0, i - 1);
      if (main === undefined || main.length < q.leastMain_m) continue;
      const others = pieces.slice(first + 1).filter((p) => p !== undefined && p.length >= q.leastPiece_m) as { length: number; strength: number; splices: number }[];
      for (let take = 0; take < 1 << others.length; take++) {
        const kept = [main, ...others.filter((_, i) => (take >> i) & 1)];
        found.push([main.length, kept.reduce((s, p) => s + p.length, 0), Math.min(...kept.map((p) => p.strength)), -kept.reduce((s, p) => s + p.splices, 0)]);
      }
    }
  }
  return found;
}

function weigh(q: CutQuestion, from: number, to: number, atDrum = false, cutA = from > 0): { length: number; strength: number; splices: number } | undefined {
  const cutB = to < q.length_m;
  // The end at the drum takes rope only where it is an eye, and no pull loads it.
  const eyeA = !cutA ? 0 : atDrum ? q.drumUses_m! : q.eyeUses_m;
  let strength = Math.min(q.soundStrength_N, cutB ? q.eyeStrength_N : (q.outboardStrength_N ?? 0), eyeA > 0 ? q.eyeStrength_N : Infinity);
  for (const d of q.damages) {
    // A cut at the very edge leaves the damage on the other side; a point of damage at a cut is cut through and gone.
    const touches = d.from_m === d.to_m ? (d.from_m > from || (d.from_m === from && !cutA)) && (d.to_m < to || (d.to_m === to && !cutB)) : d.to_m > from && d.from_m < to;
    if (!touches) continue;
    if (d.strength_N === undefined || d.mustGo === true) return undefined;
    if (cutA && d.from_m < from + eyeA) return undefined;
    if (cutB && d.to_m > to - q.eyeUses_m) return undefined;
    strength = Math.min(strength, d.strength_N);
  }
  if (!cutB && (q.outboardStrength_N === undefined || (cutA && from + eyeA > q.outboardFrom_m))) return undefined;
  const length = to - from - eyeA - (cutB ? q.eyeUses_m : 0);
  return length > 0 ? { length, strength, splices: Number(cutA) + Number(cutB) } : undefined;
}

test('no cutting at whole metres beats the planner, and the planner has nothing that cannot be cut', () => {
  let compared = 0;
  fc.assert(
    fc.property(small, fc.boolean(), fc.boolean(), ([length, damages, eye, outboard], mayDropInboard, isEye) => {
      const q = question(length, damages, { eyeUses_m: eye, outboardStrength_N: outboard, mayDropInboard, drumUses_m: isEye ? eye : 0 });
      const planned = planCutsOf(q).map((p) => [p.main.length_m, p.total_m, p.weakest_N, -p.splices].join(' ')).sort();
      const tried = paretoFront(byBruteForce(q), (values) => values).map((values) => values.join(' ')).sort();
      expect(planned).toEqual(tried);
      compared += tried.length;
    }),
    { numRuns: 600 },
  );
  expect(compared).toBeGreaterThan(300);
});

test('more damage never gives a choice that serves where none did', () => {
  fc.assert(
    fc.property(small, ([length, damages, eye]) => {
      const q = question(length, damages, { eyeUses_m: eye });
      const fewer = planCutsOf({ ...q, damages: damages.slice(1) });
      for (const plan of planCutsOf(q)) {
        expect(fewer.some((f) => f.main.length_m >= plan.main.length_m && f.total_m >= plan.total_m && f.weakest_N >= plan.weakest_N && f.splices <= plan.splices)).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
});

test('forty entries on 30 m leave choices that none beats', () => {
  const found = planCutsOf(fortyEntries);
  expect(found.length).toBeGreaterThan(10);
});

test('the front keeps one of equals and nothing that is beaten', () => {
  expect(paretoFront([[1, 2], [2, 1], [1, 1], [2, 1], [0, 3]], (v) => v)).toEqual([[1, 2], [2, 1], [0, 3]]);
});
