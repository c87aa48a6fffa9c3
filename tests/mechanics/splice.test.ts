import { describe, expect, test } from 'vitest';
import '../../src-core/mechanics/line-calculations.ts';
import '../../src-core/mechanics/splice-calculations.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { isUnknown, unknown, type Value } from '../../src-core/mechanics/derivation.ts';
import { exactly } from '../../src-core/units/amount.ts';
import { showGiven, showResult } from '../../src-core/mechanics/explain.ts';
import { readInput } from '../../src-core/mechanics/read-input.ts';
import { spliceMarks } from '../../src-core/mechanics/splice-marks.ts';
import { strengthOfWorstPlace, worstPlace } from '../../src-core/mechanics/strength-of-worst-place.ts';
import { taperSchedule } from '../../src-core/mechanics/taper-schedule.ts';
import type { Kind } from '../../src-core/units/dimension.ts';

const given = (text: string, kind: Kind) => {
  const read = readInput('x', { kind, meaning: 'a value' }, text);
  if (typeof read === 'string') throw new Error(read);
  return read;
};
const missing = unknown({ key: 'x', says: 'it is not given', help: 'give it' });

function work(name: string, inputs: Record<string, string>): string {
  const calculation = calculations().get(name)!;
  const values = Object.fromEntries(Object.entries(calculation.symbols).map(([symbol, definition]) => [symbol, given(inputs[symbol]!, definition.kind)]));
  const result = calculation(values as Record<string, Value>);
  return isUnknown(result) ? result.unknown.says : showResult(result);
}

const splice = { F_b: '92 kN', η: '90 to 100 %', T: '460 mm', T_0: '720 mm', t: '150 mm', t_0: '210 mm', β: '8.7 %' };

test.each<[string, Record<string, string>, string]>([
  ['strength-after-cut-strands', { F_b: '92 kN', n: '2', N: '12' }, '76.6 kN'],
  ['strength-after-cut-strands', { F_b: '92 kN', n: '12', N: '12' }, '0 N'],
  ['strength-after-cut-strands', { F_b: '92 kN', n: '13', N: '12' }, 'more strands are cut than the line has'],
  ['strength-after-abrasion', { F_b: '92 kN', a: '25 %' }, '69 kN'],
  ['strength-after-losses', { F_b: '100 kN', s_1: '25 %', s_2: '10 %' }, '65 kN'],
  ['strength-after-losses', { F_b: '100 kN', s_1: '75 %', s_2: '50 %' }, '0 N'],
  // 92 kN · 0.9 · 460/720 = 52.9 kN; the short taper takes 8.7 % · 60/210 = 2.49 % off: 51.58 kN. At full efficiency 57.3 kN.
  ['strength-of-splice', splice, '51.5 to 57.4 kN'],
  ['strength-of-splice', { ...splice, T: '720 mm', t: '210 mm' }, '82.8 to 92 kN'],
  ['strength-of-splice', { ...splice, T: '900 mm', t: '300 mm' }, '82.8 to 92 kN'],
  ['strength-of-splice', { ...splice, T: '100 mm' }, 'the taper is longer than the bury it is part of'],
  ['strength-of-splice', { ...splice, T: '0 mm', t: '0 mm' }, '0 N'],
  ['wet-strength', { F_b: '100 kN', ω: '15 %' }, '85 kN'],
  ['strength-after-outdoor-time', { F_b: '100 kN', λ: '30 %', τ: '1 year', τ_0: '2 years' }, '85 kN'],
  ['strength-after-outdoor-time', { F_b: '100 kN', λ: '30 %', τ: '9 years', τ_0: '2 years' }, '0 N'],
  ['bury-in-diameters', { T: '46 cm', d: '10 mm' }, '46 d'],
  ['bury-share', { T: '46 cm', T_0: '720 mm' }, '63.8 %'],
  ['bury-share', { T: '80 cm', T_0: '720 mm' }, '100 %'],
  ['taper-needed', { k_t: '21 d', d: '10 mm' }, '210 mm'],
  ['eye-loop-length', { l: '10 cm' }, '200 mm'],
  ['eye-loop-around-thimble', { D: '40 mm', d: '10 mm' }, '157 mm'],
  // r = 16 mm, q = 55 mm, φ = 16.91°: 2 · 52.62 + (π + 0.5903) · 16 = 164.95 mm.
  ['eye-loop-around-pin', { l: '66 mm', D: '22 mm', d: '10 mm' }, '165 mm'],
  ['eye-loop-around-pin', { l: '27 mm', D: '22 mm', d: '10 mm' }, 'the eye is too short to go around the pin'],
  ['throat-angle', { l: '66 mm', D: '22 mm', d: '10 mm' }, '33.8 deg'],
  ['throat-angle', { l: '20 mm', D: '22 mm', d: '10 mm' }, 'the eye is too short to go around the pin'],
  ['splice-shortening', { T: '720 mm', c: '15 to 25 %' }, '127 to 240 mm'],
  ['exit-distance', { T: '720 mm', c: '15 to 25 %' }, '847 to 960 mm'],
  ['entry-mark', { T: '720 mm', E: '200 mm' }, '920 mm'],
  ['exit-mark', { T: '720 mm', E: '200 mm', c: '25 %' }, '1.88 m'],
  ['rope-used-by-eye', { T: '720 mm', E: '200 mm', c: '25 %' }, '1.06 m'],
  ['rope-used-by-end-to-end', { T: '720 mm', c: '25 %' }, '1.92 m'],
  ['line-needed-for-finished-length', { L_f: '20 m', U_1: '1.06 m', U_2: '0 m' }, '21.06 m'],
  ['finished-length', { L_0: '21.06 m', U_1: '1.06 m', U_2: '0 m' }, '20 m'],
  ['finished-length', { L_0: '2 m', U_1: '1.06 m', U_2: '1 m' }, 'the splices use up the whole line'],
  ['helix-shortening-estimate', { 'α₁': '40 deg', σ: '40 %' }, 'the strands cannot open this far'],
  ['lock-stitch-length', { k: '6 to 8 d', d: '10 mm' }, '60 to 80 mm'],
])('%s of %o is %s', (name, inputs, expected) => {
  expect(work(name, inputs)).toBe(expected);
});

test('time outdoors beyond the observed time carries a note', () => {
  const outdoor = calculations().get('strength-after-outdoor-time')!;
  const after = (time: string) => {
    const result = outdoor({ F_b: given('100 kN', 'breaking strength'), λ: given('30 %', 'needed share'), τ: given(time, 'time'), τ_0: given('2 years', 'time') });
    return isUnknown(result) ? [] : result.notes;
  };
  expect(after('3 years')).toEqual(['the time outdoors is longer than the time over which the loss was observed']);
  expect(after('2 years')).toEqual([]);
});

describe('marks of an eye splice', () => {
  const marks = (bury: Value, taper: Value | undefined, loop: Value): string[] => {
    const read = spliceMarks({ bury, taper, eyeLoop: loop, shortening: given('15 to 25 %', 'needed share') });
    return isUnknown(read) ? [`? ${read.unknown.says}`] : read.map((mark) => `${mark.name} ${isUnknown(mark.at) ? '?' : showGiven(mark.at)}`);
  };

  test('in order from the tail end', () => {
    expect(marks(given('720 mm', 'length'), given('240 mm', 'length'), given('200 mm', 'length'))).toEqual(['tail end 0 mm', 'taper start 240 mm', 'throat mark 720 mm', 'entry mark 920 mm', 'exit mark 1.76 to 1.88 m']);
  });

  test('a blunt tail has no taper start; an unknown eye leaves the marks that hang on it unknown', () => {
    expect(marks(given('720 mm', 'length'), undefined, missing)).toEqual(['tail end 0 mm', 'throat mark 720 mm', 'entry mark ?', 'exit mark ?']);
    expect(marks(missing, undefined, missing)).toEqual(['? it is not given']);
  });
});

describe('taper schedule', () => {
  const steps = (strands: string): string[] => {
    const read = taperSchedule(given('240 mm', 'length'), given(strands, 'count'));
    return isUnknown(read) ? [read.unknown.says] : read.map((step) => `${isUnknown(step.at) ? '?' : showResult(step.at)}: ${step.strandsLeft} left`);
  };

  test('6 of 12 strands are left at the tip', () => {
    expect(steps('12')).toEqual(['240 mm: 10 left', '160 mm: 8 left', '80 mm: 6 left']);
    expect(steps('8')).toEqual(['240 mm: 6 left', '120 mm: 4 left']);
  });

  test.each(['10', '3', '0', '-12', '1000', '12 to 16'])('%s strands have no published way', (strands) => {
    expect(steps(strands)[0]).toContain('no way of tapering');
  });

  test('an unknown taper or strand count gives its own cause', () => {
    expect(taperSchedule(missing, given('12', 'count'))).toBe(missing);
    expect(taperSchedule(given('1 m', 'length'), missing)).toBe(missing);
  });
});

describe('strength of the worst place', () => {
  const place = (name: string, text: string) => ({ name, strength: given(text, 'breaking strength') });

  test('is the least of all', () => {
    const worst = strengthOfWorstPlace([place('eye', '80 to 90 kN'), place('cut strands', '76 kN'), place('lug', '85 kN')]);
    expect(isUnknown(worst) ? '' : showResult(worst)).toBe('76 kN');
    expect(worstPlace([place('eye', '80 kN'), place('cut strands', '76 kN')])?.name).toBe('cut strands');
  });

  test('is unknown when one place is', () => {
    const both = strengthOfWorstPlace([place('eye', '80 kN'), { name: 'lug', strength: missing }]);
    expect(both).toMatchObject(missing);
    // The other one is the most that the line holds.
    expect(isUnknown(both) && both.atMost?.amount).toEqual(exactly(80_000));
    expect(worstPlace([place('eye', '80 kN'), { name: 'lug', strength: missing }])?.name).toBe('eye');
    expect(strengthOfWorstPlace([{ name: 'lug', strength: missing }])).toEqual(missing);
    expect(worstPlace([{ name: 'lug', strength: missing }])).toBeUndefined();
  });
});
