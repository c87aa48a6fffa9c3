import { describe, expect, test } from 'vitest';
import '../../src-core/mechanics/all.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { isUnknown, type Value } from '../../src-core/mechanics/derivation.ts';
import { noResistance } from '../../src-core/mechanics/total-resistance.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { given } from '../support/read-worked.ts';

/** What comes out in SI, one number or both ends; or the sentence why nothing does. */
function work(name: string, inputs: Record<string, string>): number | readonly [number, number] | string {
  const calculation = calculations().get(name)!;
  expect(Object.keys(inputs).sort()).toEqual(Object.keys(calculation.symbols).sort());
  const values = Object.fromEntries(Object.entries(calculation.symbols).map(([symbol, { kind }]) => [symbol, given(inputs[symbol]!, kind)]));
  const result = calculation(values as Record<string, Value>);
  if (isUnknown(result)) return result.unknown.says;
  return result.amount.low === result.amount.high ? result.amount.low : [result.amount.low, result.amount.high];
}
const notesOf = (name: string, inputs: Record<string, string>): readonly string[] => {
  const calculation = calculations().get(name)!;
  const result = calculation(Object.fromEntries(Object.entries(calculation.symbols).map(([symbol, { kind }]) => [symbol, given(inputs[symbol]!, kind)])) as Record<string, Value>);
  return isUnknown(result) ? [result.unknown.says] : result.notes;
};

// Numbers that can be followed on a slip of paper; the calculation stands beside each that is more than one step.
test.each<[string, Record<string, string>, number]>([
  ['bend-ratio', { D: '22 mm', d: '10 mm' }, 2.2],
  ['cut-strand-share', { n: '3', N: '12' }, 0.25],
  ['cut-strand-share', { n: '12', N: '12' }, 1],
  ['overload-limit', { F_b: '92 kN', o: '75 %' }, 69_000],
  ['strength-of-knot', { F_b: '92 kN', k: '50 %' }, 46_000],
  ['soft-shackle-strength', { k: '1.7', F: '20 kN' }, 34_000],
  ['side-loaded-limit', { s: '70 %', WLL: '47 kN' }, 32_900],
  ['breaking-from-working-limit', { WLL: '10 kN', f: '5' }, 50_000],
  ['working-limit-from-breaking', { MBL: '50 kN', f: '4' }, 12_500],
  ['tension-in-part', { s: '90 %', T: '10 kN' }, 9_000],
  ['tension-in-use', { T_n: '31 kN', F_n: '27 kN' }, 27_000],
  ['tension-in-use', { T_n: '12 kN', F_n: '27 kN' }, 12_000],
  ['line-stretch', { ε: '3 %', L: '30 m' }, 0.9],
  // ½ · 40 kN · 0.9 m.
  ['stored-energy', { F: '40 kN', x: '0.9 m' }, 18_000],
  // √(2 · 18,000 J / 0.36 kg) = √100,000.
  ['recoil-speed', { E: '18 kJ', m: '0.36 kg' }, 316.227766],
  ['stand-off-distance', { L: '30 m' }, 30],
  // 0.666 and 1.5 of 30 kN.
  ['braked-vehicle-hold', { W: '30 kN' }, 19_980],
  ['anchor-vehicle-needed', { R: '30 kN' }, 45_000],
  // 0.6 · 0.5 · 30 kN.
  ['drag-resistance', { f: '0.6', p: '50 %', W: '30 kN' }, 9_000],
  // 62.4 · 4.4482216 N / 0.028316847 m³ = 9,802.26 N/m³; 2 m² · 0.5 m hold one cubic metre.
  ['water-load', { A: '2 m2', h: '0.5 m' }, 9_802.2577],
  ['grade-resistance', { W: '30 kN', α: '90 deg' }, 30_000],
  ['grade-resistance', { W: '30 kN', α: '30 deg' }, 15_000],
  ['grade-resistance-by-rule', { W: '30 kN', α: '45 deg' }, 22_500],
  // Parts straight on: both tensions; at right angles √(1 + 0.81) = 1.345362; back to back the difference.
  ['block-load-with-friction', { T: '10 kN', e: '90 %', θ: '0 deg' }, 19_000],
  ['block-load-with-friction', { T: '10 kN', e: '90 %', θ: '90 deg' }, 13_453.624],
  ['block-load-with-friction', { T: '10 kN', e: '90 %', θ: '180 deg' }, 1_000],
  ['block-load', { T: '10 kN', θ: '90 deg' }, 14_142.136],
  ['bridle-leg-tension', { P: '10 kN', θ: '0 deg' }, 5_000],
  ['bridle-leg-tension', { P: '10 kN', θ: '120 deg' }, 10_000],
  // The leg 30° off the pull takes sin 60° of it, the other one sin 30°.
  ['bridle-uneven-tension', { P: '10 kN', α: '30 deg', β: '60 deg' }, 8_660.254],
  ['bridle-uneven-tension', { P: '10 kN', α: '60 deg', β: '30 deg' }, 5_000],
  // 89° and 89.9° on either side still hold: sin 89.9° / sin 178.9° = 0.99999848 / 0.01919744.
  ['bridle-uneven-tension', { P: '1 kN', α: '89 deg', β: '89.9 deg' }, 52_090.193],
  ['sling-leg-tension', { W: '10 kN', β: '90 deg' }, 5_000],
  ['sling-leg-tension', { W: '10 kN', β: '30 deg' }, 10_000],
  // E (1 − E²) / (1 − E) = E + E² = 0.9 + 0.81.
  ['tackle-advantage', { n: '2', E: '90 %' }, 1.71],
  ['tackle-advantage', { n: '3', E: '100 %' }, 3],
  ['lead-line-pull', { R: '17.1 kN', MA: '1.71' }, 10_000],
  // Two parts lose 10 % once, so 11 kN over 2.
  ['tackle-resistance', { LR: '10 kN', MA: '2' }, 1_000],
  ['tackle-resistance', { LR: '10 kN', MA: '1' }, 0],
  ['fall-line-force', { LR: '10 kN', TR: '1 kN', MA: '2' }, 5_500],
  ['dead-line-force', { FLF: '5.5 kN', n: '2' }, 11_000],
  // A pull that is a whole number of times in the resistance needs just as many parts; a winch that is stronger needs one.
  ['parts-needed', { LR: '20 kN', P: '10 kN' }, 2],
  ['parts-needed', { LR: '20.1 kN', P: '10 kN' }, 3],
  ['parts-needed', { LR: '5 kN', P: '10 kN' }, 1],
  ['parts-needed', { LR: '0 kN', P: '10 kN' }, 1],
  // 2.1 over 0.7 is 3.0000000000000004 in binary.
  ['parts-needed', { LR: '2.1 N', P: '0.7 N' }, 3],
  // One wrap as wide as the drum, on one layer as high as the flange: π (64 + 10) mm.
  ['wraps-per-layer', { W: '10 mm', d: '10 mm' }, 1],
  ['layers-that-fit', { A: '84 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 1],
  ['drum-capacity-by-layers', { W: '10 mm', A: '84 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 0.23247785637],
  // In these sizes nothing is lost to binary.
  ['freeboard', { A: '0.75 m', B: '0.25 m', d: '0.25 m', n: '1' }, 0],
  ['freeboard', { A: '84 mm', B: '64 mm', d: '10 mm', n: '1' }, 0],
  // 23 wraps of π 74 mm and ten of π 94 mm: 5.346991 m + 2.953097 m.
  ['wraps-left', { w: '23', B: '64 mm', d: '10 mm', y: '8.300088 m' }, 33],
  // A metre, and a trace, over π 74 mm.
  ['wraps-left', { w: '23', B: '64 mm', d: '10 mm', y: '1 m' }, 4.3014867],
  ['wraps-left', { w: '23', B: '64 mm', d: '10 mm', y: '0.000001 mm' }, 4.3014867e-9],
  ['length-kept-by-wraps', { w: '23', B: '64 mm', d: '10 mm', k: '33' }, 8.300088],
  ['line-left-on-drum', { L: '30 m', x: '30 m' }, 0],
  ['usable-length', { L: '2 m', K: '2 m' }, 0],
  // exp(2 π · 0.1 · 5) = exp π = 23.140693.
  ['tension-at-fastening', { 'T₂': '10 kN', μ: '0.1', k: '5' }, 432.13918],
  ['capstan-hold', { μ: '0.1', θ: '1800 deg' }, 23.140693],
  ['finished-length', { L_0: '30 m', U_1: '1 m', U_2: '2 m' }, 27],
  ['line-needed-for-finished-length', { L_f: '27 m', U_1: '1 m', U_2: '2 m' }, 30],
  // Steps of 80 mm down from the start of a taper of 240 mm.
  ['taper-drop-mark', { t: '240 mm', i: '1', m: '3' }, 0.24],
  ['taper-drop-mark', { t: '240 mm', i: '3', m: '3' }, 0.08],
  // The taper may be the whole of the bury.
  ['strength-of-splice', { F_b: '92 kN', η: '100 %', T: '720 mm', T_0: '720 mm', t: '720 mm', t_0: '210 mm', β: '8.7 %' }, 92_000],
  // A throat 30 mm from the far side of a 22 mm pin: sin φ = 16 / 19, φ = 57.3631°.
  ['throat-angle', { l: '30 mm', D: '22 mm', d: '10 mm' }, 2.0023500],
  // The same eye in line: 2 · 19 cos φ + (π + 2 φ) · 16 = 20.4939 + 50.2655 + 32.0376 mm.
  ['eye-loop-around-pin', { l: '30 mm', D: '22 mm', d: '10 mm' }, 0.10279698],
])('%s of %o is %d', (name, inputs, expected) => {
  const got = work(name, inputs);
  if (typeof got !== 'number') throw new Error(`one number was expected, not ${got}`);
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-6 * Math.abs(expected) + 1e-12);
});

test.each<[string, Record<string, string>, string]>([
  ['cut-strand-share', { n: '13', N: '12' }, 'more strands are cut than the line has'],
  ['finished-length', { L_0: '3 m', U_1: '1 m', U_2: '2 m' }, 'the splices use up the whole line'],
  // 89.5° on both sides, or 180° together.
  ['bridle-uneven-tension', { P: '1 kN', α: '89.5 deg', β: '89.5 deg' }, 'the two legs pull against each other in one line and cannot take the pull'],
  ['bridle-uneven-tension', { P: '1 kN', α: '90 deg', β: '90 deg' }, 'the two legs pull against each other in one line and cannot take the pull'],
  // D + d/2 = 27 mm is where the throat opens flat.
  ['throat-angle', { l: '27 mm', D: '22 mm', d: '10 mm' }, 'the eye is too short to go around the pin'],
  ['throat-angle', { l: '26 mm', D: '22 mm', d: '10 mm' }, 'the eye is too short to go around the pin'],
  ['eye-loop-around-pin', { l: '26 mm', D: '22 mm', d: '10 mm' }, 'the eye is too short to go around the pin'],
  ['drum-capacity-by-layers', { W: '10 mm', A: '64 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 'the flange is not larger than the barrel'],
  ['drum-capacity-by-layers', { W: '9 mm', A: '84 mm', B: '64 mm', d: '10 mm', f: '0 mm' }, 'the drum is narrower than the line is thick, so no wrap fits'],
  ['drum-capacity-by-layers', { W: '10 mm', A: '84 mm', B: '64 mm', d: '10 mm', f: '1 mm' }, 'not one layer fits below the flange with this freeboard'],
  ['freeboard', { A: '64 mm', B: '64 mm', d: '10 mm', n: '1' }, 'the flange is not larger than the barrel'],
])('%s of %o is refused', (name, inputs, says) => expect(work(name, inputs)).toBe(says));

describe('resistance adds up between two ends', () => {
  // The slope always counts; of ground, mire and dragging wheels the greatest alone, or all of them: 1 + 4 and 1 + 2 + 3 + 4 kN.
  test.each<[string, string, string, string, number, number]>([
    ['2 kN', '1 kN', '3 kN', '4 kN', 5_000, 10_000],
    ['4 kN', '1 kN', '2 kN', '3 kN', 5_000, 10_000],
    ['3 kN', '1 kN', '4 kN', '2 kN', 5_000, 10_000],
  ])('%s, %s, %s, %s', (R_s, R_g, R_m, R_d, low, high) => expect(work('total-resistance', { R_s, R_g, R_m, R_d })).toEqual([low, high]));

  test('a part that does not act is nothing, and says whose word that is', () => {
    expect(noResistance(sources.geometry)).toEqual({ amount: { low: 0, high: 0 }, kind: 'resistance', origin: { from: 'constant', source: sources.geometry } });
  });
});

describe('remarks', () => {
  test('over 120° the legs of a bridle carry more than the pull', () => {
    expect(notesOf('bridle-leg-tension', { P: '10 kN', θ: '120 deg' })).toEqual([]);
    expect(notesOf('bridle-leg-tension', { P: '10 kN', θ: '120.5 deg' })).toEqual(['over 120° each leg carries more than the whole pull']);
  });
  test('line that stands just at the flange does not stand above it', () => expect(notesOf('freeboard', { A: '0.75 m', B: '0.25 m', d: '0.25 m', n: '1' })).toEqual([]));
  // The hoist manual's table ends at 20.
  test('beyond the last row of wire over sheaves its loss is kept, and that is said', () => {
    expect(notesOf('wire-bend-share', { R: '20' })).toEqual([]);
    expect(notesOf('wire-bend-share', { R: '40' })).toEqual(['the table ends at a ratio of 20; its last loss is kept']);
    expect(work('wire-bend-share', { R: '40' })).toBe(work('wire-bend-share', { R: '20' }));
    // Between 6 (79 % left) and 8 (83 % left) the sharper bend counts.
    expect(work('wire-bend-share', { R: '7.9' })).toBeCloseTo(0.79, 12);
  });
});

test('losses that add up to just the whole leave nothing', () => {
  expect(work('strength-after-losses', { F_b: '100 kN', s_1: '60 %', s_2: '40 %' })).toBeCloseTo(0, 9);
  expect(work('wet-strength', { F_b: '100 kN', ω: '0 %' })).toBe(100_000);
});
