import { describe, expect, test } from 'vitest';
import { describePlan, planCuts, type CutChoices } from '../../src-core/assess/plan-cuts.ts';
import { Assessing } from '../../src-core/assess/assessing.ts';
import { cutOutText, repairText } from '../../src-core/assess/repair-text.ts';
import { isUnknown } from '../../src-core/mechanics/derivation.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Reader } from '../../src-core/model/scope.ts';
import { judgedRig } from '../support/judged-pull.ts';

const line = (log: string, more = ''): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
${log}}
${more}`;
const winch = 'winch bow-winch {\n  rated    42 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  keep     10 wraps\n  carries  main\n}\n';
const damaged = line('  2026-06-21  damage  cut 2 strands at 8.4 m from inboard\n  2026-06-21  damage  abrasion heavy from 7.9 m to 9.1 m from inboard\n', winch);

function planned(text: string) {
  const { root, block } = judgedRig(text);
  const { assessed } = block('line');
  if (assessed.kind !== 'line') throw new Error('the line was not assessed');
  const assessing = new Assessing(new Reader(root.scope), readDay('2026-07-01')!);
  const piece = assessed.pieces.get('main')!;
  const [carrier] = assessing.reader.winchesCarrying('main');
  const options = { winch: carrier === undefined ? undefined : assessing.winch(carrier) };
  return { piece, assessing, options, choices: planCuts(piece, options) };
}
const known = (choices: ReturnType<typeof planCuts>): CutChoices => {
  if (isUnknown(choices)) throw new Error(choices.unknown.says);
  return choices;
};

describe('one damaged stretch', () => {
  const { piece, choices, assessing, options } = planned(damaged);
  test('both sides stay, the far one as an extension', () => {
    // Cut 50 mm clear of 7.9 m; the new eye takes 0.72 m / 0.75 and half of 40 d: 1.16 m.
    expect(describePlan(known(choices).recommended, piece)).toBe('main line of 6.69 m, 1 extension of 19.69 m, weakest place 82.8 kN, 2 splices');
  });
  test('what the other choice buys', () => expect(known(choices).alternatives.map((a) => a.buys)).toEqual(['14.16 m more main line, 5.53 m less in all, 1 splice less']));
  test('the repair is written in the language', () => {
    expect(repairText(piece, known(choices).recommended, { isTaken: () => false, label: 'until home' })).toBe(`repair cut-out-main on main "until home" {
  cut     at 7.85 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 21 d stitched
  cut     at 9.15 m from inboard keep tail
  splice  tail inboard eye thimble tube bury 72 d taper 21 d stitched
}
`);
  });
  test('the text binds, and leaves what was planned', () => {
    const found = cutOutText(piece, assessing, options)!;
    if (isUnknown(found)) throw new Error(found.unknown.says);
    const { text } = found;
    const after = judgedRig(`${damaged}\n${text}`);
    expect(after.findings.filter((f) => f.severity === 'error').map((f) => f.code)).toEqual(['damage-left-in-service', 'damage-left-in-service']);
    const { assessed } = after.block('repair');
    if (assessed.kind !== 'repair') throw new Error('the repair was not assessed');
    const lengths = [...assessed.after.pieces.values()].map((p) => (isUnknown(p.length) ? NaN : p.length.amount.low));
    expect(lengths[0]).toBeCloseTo(known(choices).recommended.main.length_m, 2);
    expect(lengths[1]).toBeCloseTo(known(choices).recommended.extensions[0]!.length_m, 2);
    expect([...assessed.after.pieces.values()].flatMap((p) => p.damages)).toEqual([]);
    for (const p of assessed.after.pieces.values()) expect(isUnknown(p.body) ? NaN : p.body.amount.low).toBeGreaterThanOrEqual(82_800);
    expect(text).toContain('keep tail');
  });
  test('a name that is taken gets a number', () => expect(repairText(piece, known(choices).recommended, { isTaken: (name) => name === 'tail' })).toContain('keep tail-2'));
});

test('several stretches, two of them kept between cuts', () => {
  const text = line(['8 m', '15 m', '22 m'].map((at) => `  2026-06-21  damage  cut 3 strands at ${at} from inboard\n`).join(''));
  const { piece, choices } = planned(text);
  const plan = known(choices).recommended;
  expect(plan.extensions.length).toBe(3);
  const after = judgedRig(text + repairText(piece, plan, { isTaken: () => false })).block('repair').assessed;
  if (after.kind !== 'repair') throw new Error('the repair was not assessed');
  const lengths = [...after.after.pieces.values()].map((p) => (isUnknown(p.length) ? NaN : p.length.amount.low)).sort((a, b) => a - b);
  const wanted = [plan.main, ...plan.extensions].map((p) => p.length_m).sort((a, b) => a - b);
  expect(lengths.length).toBe(4);
  lengths.forEach((length, i) => expect(Math.abs(length - wanted[i]!)).toBeLessThan(0.021));
});

test('in feet the cuts are written in feet', () => {
  const text = damaged.replace('30 m', '98 ft');
  const { piece, choices } = planned(text);
  expect(repairText(piece, known(choices).recommended, { isTaken: () => false })).toContain('cut     at 25.75 ft from inboard');
});

const burnt = line('  2026-06-21  damage  cut 3 strands at 1.2 m from inboard\n', winch);

describe('damage at the drum', () => {
  // Cut 50 mm clear of 1.2 m: 30 - 1.25 = 28.75 m.
  test.each([
    ['a lug is made again', burnt, 'repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n  splice  inboard lug\n}\n'],
    ['a plain end is clamped as it is cut', burnt.replace('inboard   lug', 'inboard   bare'), 'repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n}\n'],
    // A new eye takes 0.72 m / 0.75 and half of 40 d: 28.75 - 1.16 = 27.59 m.
    ['an eye is spliced again', burnt.replace('inboard   lug', 'inboard   eye bury 72 d taper 24 d'), 'repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n  splice  inboard eye bury 72 d taper 21 d stitched\n}\n', 27.59],
    ['a knot becomes an eye', burnt.replace('inboard   lug', 'inboard   knot'), 'repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n  splice  inboard eye bury 72 d taper 21 d stitched\n}\n', 27.59],
    // A hook needs no loop of line, half of 40 d: the plan counts it all the same.
    ['a hook is spliced in again', burnt.replace('inboard   lug', 'inboard   hook bury 72 d taper 24 d'), 'repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n  splice  inboard hook bury 72 d taper 21 d stitched\n}\n', 27.59, 0.2],
  ])('goes with the end at the drum: %s', (_, text, written, left = 28.75, more = 0) => {
    const { piece, choices, assessing, options } = planned(text);
    expect(describePlan(known(choices).recommended, piece)).toContain(`main line of ${left} m, weakest place`);
    const found = cutOutText(piece, assessing, options)!;
    expect(isUnknown(found) ? found.unknown.says : found.text).toBe(written);
    const { findings, block } = judgedRig(`${text}\n${written}`);
    expect(findings.map((f) => f.code).filter((code) => ['keep-wraps-lost', 'repair-leaves-damage', 'longer-piece-dropped', 'bare-end'].includes(code))).toEqual([]);
    const { assessed } = block('repair');
    expect(assessed.kind === 'repair' && assessed.after.pieces.get('main')!.length).toMatchObject({ amount: { low: expect.closeTo(left + more, 9) } });
  });
});

describe('what cannot be planned, and why', () => {
  test.each([
    ['brittle line', line('  2026-06-21  damage  brittle at 8 m from inboard\n'), 'is not cured by a cut'],
    ['no diameter', damaged.replace('  diameter  10 mm\n', ''), 'diameter of `main` is not given'],
    ['no material', damaged.replace('  material  HMPE\n', ''), 'material of `main` is not given'],
    ['no length', damaged.replace('  length    30 m\n', ''), 'length of `main` is not given'],
    ['no breaking strength', damaged.replace('  breaking  92 kN\n', ''), 'breaking strength of `main` is not given'],
    ['a drum whose wraps cannot be counted', damaged.replace('  barrel   64 mm\n', ''), 'barrel diameter of `bow-winch` is not given'],
    ['retired line', line('  2026-06-21  damage  cut 2 strands at 8.4 m from inboard\n  2026-06-22  retired\n'), 'is retired'],
    ['damage at a plain end that is on no drum', burnt.replace('inboard   lug', 'inboard   bare').replace(winch, ''), 'no cut leaves a main line'],
  ])('%s', (_, text, says) => {
    const { choices } = planned(text);
    expect(isUnknown(choices) ? choices.unknown.says : 'planned').toContain(says);
  });
  test('a sound line needs no cut', () => {
    const { piece, assessing, choices } = planned(line(''));
    expect(known(choices).recommended.splices).toBe(0);
    expect(cutOutText(piece, assessing)).toBeUndefined();
  });
});

test('a place that got too hot is planned around like melted fibre, and where all of the line did there is no plan', () => {
  const repair = (log: string): string => {
    const { piece, choices } = planned(line(`  2026-06-21  ${log}\n`, winch));
    return isUnknown(choices) ? choices.unknown.says : repairText(piece, choices.recommended, { isTaken: () => false });
  };
  expect(repair('heated  120 degC from 24 m to 24.1 m from inboard')).toContain('cut     at 23.95 m from inboard');
  expect(repair('damage  melt from 24 m to 24.1 m from inboard')).toBe(repair('heated  120 degC from 24 m to 24.1 m from inboard'));
  expect(repair('heated  120 degC')).toBe('what heat of 120 degC left of `main` is not known');
});
