import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Value } from '../../src-core/mechanics/derivation.ts';
import { isUnknown, unknown } from '../../src-core/mechanics/derivation.ts';
import '../../src-core/mechanics/pull-calculations.ts';
import { armyEstimate } from '../../src-core/mechanics/army-estimate.ts';
import { blockLoad } from '../../src-core/mechanics/block-load.ts';
import { blockLoadWithFriction } from '../../src-core/mechanics/block-load-with-friction.ts';
import { bridleLegTension } from '../../src-core/mechanics/bridle-leg-tension.ts';
import { bridleUnevenTension } from '../../src-core/mechanics/bridle-uneven-tension.ts';
import { deadmanHold } from '../../src-core/mechanics/deadman-hold.ts';
import { deadmanHoldingPower } from '../../src-core/mechanics/deadman-holding-power.ts';
import { deadmanLength } from '../../src-core/mechanics/deadman-length.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { gradeResistance } from '../../src-core/mechanics/grade-resistance.ts';
import { recoilSpeed } from '../../src-core/mechanics/recoil-speed.ts';
import { shackleSideLoadShare } from '../../src-core/mechanics/shackle-side-load-share.ts';
import { standOffFrom } from '../../src-core/mechanics/stand-off-distance.ts';
import { storedEnergy } from '../../src-core/mechanics/stored-energy.ts';
import { totalResistance } from '../../src-core/mechanics/total-resistance.ts';
import { weakestLink, type Link } from '../../src-core/mechanics/weakest-link.ts';
import { wireBendShare } from '../../src-core/mechanics/wire-bend-share.ts';
import type { Kind } from '../../src-core/units/dimension.ts';
import { given, worked } from '../support/read-worked.ts';

const value = (si: number, kind: Kind) => ({ ...given('1', 'count'), amount: { low: si, high: si }, kind });
const force = fc.double({ min: 1, max: 1e6, noNaN: true });
const rising = (arbitrary: fc.Arbitrary<number>) => fc.tuple(arbitrary, arbitrary).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const angle = (most: number) => fc.double({ min: 0, max: most, noNaN: true });

test('a sharper bend never leaves more strength', () => {
  const share = (ratio: number) => worked(wireBendShare({ R: value(ratio, 'count') })).amount.low;
  fc.assert(fc.property(rising(fc.double({ min: 6, max: 60, noNaN: true })), ([sharp, wide]) => void expect(share(sharp)).toBeLessThanOrEqual(share(wide))));
  expect(share(6)).toBeLessThan(share(20));
});

test('more side load never leaves more of a shackle', () => {
  const share = (α: number) => worked(shackleSideLoadShare({ α: value(α, 'angle') })).amount.low;
  fc.assert(fc.property(rising(angle(Math.PI / 2)), ([less, more]) => void expect(share(more)).toBeLessThanOrEqual(share(less))));
});

test('a wider angle unloads a block and loads a bridle', () => {
  fc.assert(
    fc.property(rising(angle(3.1)), force, ([narrow, wide], T) => {
      const block = (θ: number) => worked(blockLoad({ T: value(T, 'tension'), θ: value(θ, 'angle') })).amount.high;
      const leg = (θ: number) => worked(bridleLegTension({ P: value(T, 'tension'), θ: value(θ, 'angle') })).amount.high;
      expect(block(wide)).toBeLessThanOrEqual(block(narrow));
      expect(leg(wide)).toBeGreaterThanOrEqual(leg(narrow));
    }),
  );
});

test('friction never loads a block beyond what it takes without', () => {
  fc.assert(
    fc.property(force, fc.double({ min: 0.5, max: 1, noNaN: true }), angle(Math.PI / 2), (T, e, θ) => {
      const rough = worked(blockLoadWithFriction({ T: value(T, 'tension'), e: value(e, 'share'), θ: value(θ, 'angle') })).amount.high;
      expect(rough).toBeLessThanOrEqual(worked(blockLoad({ T: value(T, 'tension'), θ: value(θ, 'angle') })).amount.high * (1 + 1e-12));
    }),
  );
});

test('both legs of an uneven bridle together make the pull', () => {
  fc.assert(
    fc.property(force, fc.double({ min: 0.01, max: 1.5, noNaN: true }), fc.double({ min: 0.01, max: 1.5, noNaN: true }), (P, a, b) => {
      const leg = (α: number, β: number) => worked(bridleUnevenTension({ P: value(P, 'tension'), α: value(α, 'angle'), β: value(β, 'angle') })).amount.high;
      const [one, other] = [leg(a, b), leg(b, a)];
      expect(Math.abs((one * Math.cos(a) + other * Math.cos(b)) / P - 1)).toBeLessThan(1e-9);
      expect(Math.abs(one * Math.sin(a) - other * Math.sin(b)) / P).toBeLessThan(1e-9);
    }),
  );
});

test('a steeper slope never resists less', () => {
  const resistance = (α: number) => worked(gradeResistance({ W: value(20_000, 'weight'), α: value(α, 'angle') })).amount.high;
  fc.assert(fc.property(rising(angle(Math.PI / 2)), ([flat, steep]) => void expect(resistance(flat)).toBeLessThanOrEqual(resistance(steep))));
});

test('a further resistance never lowers the total, and the range holds each of its parts', () => {
  fc.assert(
    fc.property(force, force, force, force, fc.double({ min: 0, max: 1e5, noNaN: true }), (R_s, R_g, R_m, R_d, more) => {
      const total = (extra: number) => worked(totalResistance({ R_s: value(R_s, 'resistance'), R_g: value(R_g, 'resistance'), R_m: value(R_m + extra, 'resistance'), R_d: value(R_d, 'resistance') })).amount;
      expect(total(more).low).toBeGreaterThanOrEqual(total(0).low);
      expect(total(more).high).toBeGreaterThanOrEqual(total(0).high);
      expect(total(0).low).toBeGreaterThanOrEqual(R_g + Math.max(R_s, R_m, R_d));
      expect(total(0).high).toBeCloseTo(R_s + R_g + R_m + R_d, 3);
    }),
  );
});

test('the log that a pull asks for holds that pull', () => {
  fc.assert(
    fc.property(fc.double({ min: 100, max: 2e5, noNaN: true }), fc.double({ min: 0.92, max: 3, noNaN: true }), fc.double({ min: 1, max: 6, noNaN: true }), fc.double({ min: 0.1, max: 0.6, noNaN: true }), (F, D, n, b) => {
      const power = worked(deadmanHoldingPower({ D: value(D, 'usable length'), n: value(n, 'count'), k: value(1, 'count') })).amount.low;
      const L = worked(deadmanLength({ F: value(F, 'load'), HP: value(power, 'pressure'), b: value(b, 'diameter') })).amount.high;
      fc.pre(L > 0.3049);
      expect(worked(deadmanHold({ HP: value(power, 'pressure'), b: value(b, 'diameter'), L: value(L, 'usable length') })).amount.low / F).toBeCloseTo(1, 6);
    }),
  );
});

test('a log that lies deeper or is pulled flatter never holds less', () => {
  const power = (D: number, n: number) => worked(deadmanHoldingPower({ D: value(D, 'usable length'), n: value(n, 'count'), k: value(1, 'count') })).amount.low;
  fc.assert(
    fc.property(rising(fc.double({ min: 0.92, max: 3, noNaN: true })), rising(fc.double({ min: 1, max: 8, noNaN: true })), ([shallow, deep], [steep, flat]) => {
      expect(power(shallow, steep)).toBeLessThanOrEqual(power(deep, steep));
      expect(power(shallow, steep)).toBeLessThanOrEqual(power(shallow, flat));
    }),
  );
});

test('what flies with all of the stored energy carries all of it', () => {
  fc.assert(
    fc.property(force, fc.double({ min: 0.001, max: 10, noNaN: true }), fc.double({ min: 0.1, max: 50, noNaN: true }), (F, x, m) => {
      const E = worked(storedEnergy({ F: value(F, 'tension'), x: value(x, 'distance') })).amount.high;
      expect(E).toBeCloseTo((F * x) / 2, 6);
      const v = worked(recoilSpeed({ E: value(E, 'energy'), m: value(m, 'mass') })).amount.high;
      expect((m * v * v) / 2 / E).toBeCloseTo(1, 9);
    }),
  );
});

test('the army estimate ends with a fall line force within the pull, and no smaller tackle has one', () => {
  fc.assert(
    fc.property(force, force, (resistance, pull) => {
      const estimate = armyEstimate(value(resistance, 'resistance'), value(pull, 'line pull'));
      if (isUnknown(estimate)) return;
      expect(estimate.answer.fallLineForce.amount.high).toBeLessThanOrEqual(pull * (1 + 1e-9));
      expect(estimate.answer.isWithinPull).toBe(true);
      for (const round of estimate.rounds.slice(0, -1)) expect(round.fallLineForce.amount.high).toBeGreaterThan(pull);
    }),
  );
});

const missing = (name: string) => unknown({ key: name, says: `${name} is not given`, help: `write ${name}` });

test('every missing input of every calculation gives its own cause and no number', () => {
  let tried = 0;
  for (const [name, calculation] of calculations()) {
    const symbols = Object.keys(calculation.symbols);
    for (const lacking of symbols) {
      const inputs: Record<string, Value> = {};
      for (const symbol of symbols) inputs[symbol] = symbol === lacking ? missing(`${name} ${symbol}`) : value(calculation.symbols[symbol]!.min ?? 1, calculation.symbols[symbol]!.kind);
      expect(calculation(inputs)).toEqual(missing(`${name} ${lacking}`));
      tried++;
    }
  }
  expect(tried).toBeGreaterThan(60);
});

test('stand-off is from the longest line, and unknown when any length is', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0.1, max: 100, noNaN: true }), { minLength: 1, maxLength: 6 }), fc.nat(), (lengths, where) => {
      const lines = lengths.map((length) => value(length, 'distance')) as unknown as [Value, ...Value[]];
      expect(worked(standOffFrom(lines)).amount.high).toBe(Math.max(...lengths));
      const holed = lines.map((line, i) => (i === where % lines.length ? missing('length of tail') : line)) as unknown as [Value, ...Value[]];
      expect(standOffFrom(holed)).toEqual(missing('length of tail'));
    }),
  );
});

const link = fc.record({
  breaking: fc.option(force, { nil: undefined }),
  workingLimit: fc.option(force, { nil: undefined }),
  factor: fc.option(fc.double({ min: 1.5, max: 12, noNaN: true }), { nil: undefined }),
});

test('the weakest known link is weaker than none of the known, and every other link is named as not judged', () => {
  fc.assert(
    fc.property(fc.array(link, { minLength: 1, maxLength: 8 }), (drawn) => {
      const links: Link[] = drawn.map(({ breaking, workingLimit, factor }, i) => ({
        name: `link${i}`,
        breaking: breaking === undefined ? undefined : value(breaking, 'breaking strength'),
        workingLimit: workingLimit === undefined ? undefined : value(workingLimit, 'working limit'),
        factor: factor === undefined ? undefined : value(factor, 'count'),
      }));
      const result = weakestLink(links);
      const limits = drawn.map(({ breaking, workingLimit, factor }) => workingLimit ?? (breaking === undefined || factor === undefined ? undefined : breaking / factor));
      const known = limits.filter((limit) => limit !== undefined);
      expect(result.byWorkingLimit.unjudged.map(({ name }) => name)).toEqual(limits.flatMap((limit, i) => (limit === undefined ? [`link${i}`] : [])));
      expect(result.byWorkingLimit.weakestKnown?.workingLimit?.force_N).toBe(known.length === 0 ? undefined : Math.min(...known));
      const strengths = drawn.map(({ breaking, workingLimit, factor }) => breaking ?? (workingLimit === undefined || factor === undefined ? undefined : workingLimit * factor));
      expect(result.byBreaking.unjudged).toHaveLength(strengths.filter((strength) => strength === undefined).length);
      for (const unjudged of [...result.byWorkingLimit.unjudged, ...result.byBreaking.unjudged]) expect(unjudged.causes.length).toBeGreaterThan(0);
    }),
  );
});

test('a range of factors is taken at its careful end, both ways', () => {
  const factor = { ...value(4, 'count'), amount: { low: 4, high: 5 } };
  const [line, shackle] = weakestLink([
    { name: 'line', breaking: { ...value(100, 'breaking strength'), amount: { low: 100, high: 120 } }, factor },
    { name: 'shackle', workingLimit: value(10, 'working limit'), factor },
  ]).links;
  expect(line!.workingLimit).toMatchObject({ force_N: 20, byFactor: true });
  expect(line!.breaking).toMatchObject({ force_N: 100, byFactor: false });
  expect(shackle!.breaking).toMatchObject({ force_N: 40, byFactor: true });
  expect(shackle!.workingLimit).toMatchObject({ force_N: 10, byFactor: false });
});

test('an unknown strength keeps its own cause in the list of links not judged', () => {
  const { byBreaking } = weakestLink([{ name: 'tail', breaking: missing('breaking of tail') }, { name: 'bow', breaking: value(5, 'breaking strength') }]);
  expect(byBreaking.weakestKnown?.name).toBe('bow');
  expect(byBreaking.unjudged).toEqual([{ name: 'tail', causes: [missing('breaking of tail').unknown] }]);
});
