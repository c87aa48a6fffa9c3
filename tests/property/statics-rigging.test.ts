import fc from 'fast-check';
import { Matrix, solve as solveByLibrary } from 'ml-matrix';
import { expect, test } from 'vitest';
import { between, exactly } from '../../src-core/units/amount.ts';
import { solveLinear } from '../../src-core/mechanics/solve-linear.ts';
import { solveRigging, type RiggingAnswer } from '../../src-core/mechanics/rigging.ts';
import type { Rigging, RiggingNode } from '../../src-core/mechanics/rigging-plan.ts';

const efficiency = fc.tuple(fc.double({ min: 0.6, max: 1, noNaN: true }), fc.double({ min: 0.6, max: 1, noNaN: true })).map(([a, b]) => between(a, b));
const coordinate = fc.integer({ min: -4000, max: 4000 }).map((cm) => cm / 100);
const place = fc.record({ x_m: coordinate, y_m: coordinate });
const far = (a: { x_m: number; y_m: number }, b: { x_m: number; y_m: number }): boolean => Math.hypot(a.x_m - b.x_m, a.y_m - b.y_m) > 0.5;
const answerTo = (rigging: Rigging, linePull_N = 1): RiggingAnswer => {
  const result = solveRigging(rigging, { linePull_N: exactly(linePull_N) });
  if ('problems' in result) throw new Error(result.problems.map((problem) => problem.says).join('; '));
  return result.answer;
};
const spread = 1e-9;

/** A tackle of any number of blocks, on the load and on the ground by turns, in plan or not. */
const tackle = (efficiencies: readonly { low: number; high: number }[], places: readonly { x_m: number; y_m: number }[] | undefined): Rigging => {
  const node = (name: string, on: 'ground' | 'load', i: number, more: Partial<RiggingNode> = {}): RiggingNode => ({ name, on, ...(places === undefined ? {} : { at: places[i]! }), ...more });
  const blocks = efficiencies.map((e, i) => node(`block${i}`, i % 2 === 0 ? 'load' : 'ground', i + 1, { efficiency: e }));
  const nodes = [node('winch', 'ground', 0), ...blocks, node('end', efficiencies.length % 2 === 0 ? 'load' : 'ground', efficiencies.length + 1)];
  return { nodes, ropes: [{ name: 'line', path: nodes.map(({ name }) => name) }], hauled: 'line' };
};

test('elimination agrees with a linear-algebra library', () => {
  const system = fc.integer({ min: 1, max: 7 }).chain((n) => fc.tuple(fc.array(fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: n, maxLength: n }), { minLength: n, maxLength: n }), fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: n, maxLength: n })));
  let compared = 0;
  fc.assert(
    fc.property(system, ([rows, right]) => {
      // Rows made heavier on the diagonal, so that both ways are well conditioned and have to agree.
      const heavy = rows.map((row, i) => row.map((value, j) => (i === j ? value + 80 * (value < 0 ? -1 : 1) : value)));
      const found = solveLinear(heavy, right);
      if (!('unknowns' in found)) throw new Error('no answer to a system that has one');
      const expected = solveByLibrary(new Matrix(heavy), Matrix.columnVector(right)).to1DArray();
      found.unknowns.forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-9));
      compared++;
    }),
  );
  expect(compared).toBeGreaterThan(50);
});

test('an equation that repeats others settles nothing, and one that denies them is found', () => {
  expect(solveLinear([[1, 2], [2, 4]], [3, 6])).toEqual({ undetermined: 1 });
  expect(solveLinear([[1, 0], [0, 1], [1, 1]], [1, 2, 3])).toEqual({ unknowns: [1, 2] });
  expect(solveLinear([[1, 0], [0, 1], [1, 1]], [1, 2, 5])).toEqual({ contradicted: 2, by: 2 });
  expect(solveLinear([[0, 2], [3, 0]], [4, 9])).toEqual({ unknowns: [3, 2] });
});

test('without friction a tackle pulls as many times as it has parts at the load', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 9 }), (blocks) => {
      const { advantage } = answerTo(tackle(Array.from({ length: blocks }, () => exactly(1)), undefined));
      expect(advantage.low).toBeCloseTo(blocks + 1, 9);
      expect(advantage.high).toBe(advantage.low);
    }),
  );
});

test('friction lowers the pull, and more friction lowers it further', () => {
  fc.assert(
    fc.property(fc.array(efficiency, { minLength: 1, maxLength: 8 }), fc.double({ min: 0.5, max: 0.999, noNaN: true }), (blocks, worse) => {
      const smooth = answerTo(tackle(blocks.map(() => exactly(1)), undefined));
      const rough = answerTo(tackle(blocks, undefined));
      const rougher = answerTo(tackle(blocks.map((e) => ({ low: e.low * worse, high: e.high * worse })), undefined));
      expect(rough.advantage.high).toBeLessThanOrEqual(smooth.advantage.low + spread);
      expect(rougher.advantage.low).toBeLessThan(rough.advantage.low);
      expect(rougher.advantage.high).toBeLessThan(rough.advantage.high);
    }),
  );
});

test('one more block never gives more pull for each part of line', () => {
  fc.assert(
    fc.property(fc.array(efficiency, { minLength: 0, maxLength: 8 }), efficiency, (blocks, another) => {
      const before = answerTo(tackle(blocks, undefined));
      const after = answerTo(tackle([...blocks, another], undefined));
      expect(after.advantage.low / (blocks.length + 2)).toBeLessThanOrEqual(before.advantage.low / (blocks.length + 1) + spread);
      expect(after.advantage.high / (blocks.length + 2)).toBeLessThanOrEqual(before.advantage.high / (blocks.length + 1) + spread);
    }),
  );
});

test('one more redirect never raises the pull', () => {
  fc.assert(
    fc.property(fc.array(efficiency, { minLength: 0, maxLength: 5 }), efficiency, (blocks, another) => {
      const redirects = (list: readonly { low: number; high: number }[]): Rigging => {
        const nodes: RiggingNode[] = [{ name: 'winch', on: 'ground' }, ...list.map((e, i): RiggingNode => ({ name: `tree${i}`, on: 'ground', efficiency: e })), { name: 'bow', on: 'load' }];
        return { nodes, ropes: [{ name: 'line', path: nodes.map(({ name }) => name) }], hauled: 'line' };
      };
      const before = answerTo(redirects(blocks));
      const after = answerTo(redirects([...blocks, another]));
      expect(after.advantage.low).toBeLessThanOrEqual(before.advantage.low * (1 + 1e-12));
      expect(after.advantage.high).toBeLessThanOrEqual(before.advantage.high * (1 + 1e-12));
    }),
  );
});

test('in plan, the forces on ground and load add up to nothing, with friction and without', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0.6, max: 1, noNaN: true }), { minLength: 0, maxLength: 6 }), fc.array(place, { minLength: 8, maxLength: 8 }), (blocks, places) => {
      fc.pre(places.every((a, i) => i === 0 || far(places[i - 1]!, a)));
      const result = solveRigging(tackle(blocks.map(exactly), places), { linePull_N: exactly(1000) });
      if ('problems' in result) throw new Error(result.problems[0]!.says);
      const { nodes, parts } = result.answer;
      expect(result.answer.inPlan).toBe(true);
      expect(Math.abs(nodes.reduce((sum, node) => sum + node.x_N!.low, 0))).toBeLessThan(1e-8);
      expect(Math.abs(nodes.reduce((sum, node) => sum + node.y_N!.low, 0))).toBeLessThan(1e-8);
      parts.forEach((part, i) => expect(part.tension_N.low).toBeCloseTo(1000 * blocks.slice(0, i).reduce((share, e) => share * e, 1), 6));
    }),
  );
});

test('a bridle in plan: nothing is left over at the ring, and the legs agree with a linear-algebra library', () => {
  const angle = fc.double({ min: 0.05, max: 1.4, noNaN: true });
  fc.assert(
    fc.property(angle, angle, fc.double({ min: 1, max: 1e5, noNaN: true }), (a, b, pull) => {
      const at = (x_m: number, y_m: number) => ({ x_m, y_m });
      const rigging: Rigging = {
        nodes: [
          { name: 'winch', on: 'load', at: at(-20, 0) },
          { name: 'ring', on: 'free', at: at(0, 0) },
          { name: 'larch', on: 'ground', at: at(6 * Math.cos(a), 6 * Math.sin(a)) },
          { name: 'birch', on: 'ground', at: at(4 * Math.cos(b), -4 * Math.sin(b)) },
        ],
        ropes: [{ name: 'line', path: ['winch', 'ring'] }, { name: 'left', path: ['ring', 'larch'] }, { name: 'right', path: ['ring', 'birch'] }],
        hauled: 'line',
      };
      const answer = answerTo(rigging, pull);
      const legs = solveByLibrary(new Matrix([[Math.cos(a), Math.cos(b)], [Math.sin(a), -Math.sin(b)]]), Matrix.columnVector([pull, 0])).to1DArray();
      const tension = (rope: string) => answer.parts.find((part) => part.rope === rope)!.tension_N.low;
      expect(Math.abs(tension('left') / legs[0]! - 1)).toBeLessThan(1e-9);
      expect(Math.abs(tension('right') / legs[1]! - 1)).toBeLessThan(1e-9);
      for (const node of answer.nodes) expect(node.residual_N).toBeLessThan(1e-9 * pull);
      expect(answer.pull_N.low).toBeCloseTo(pull, 6);
    }),
  );
});

test('a block on a strap in plan: nothing is left over at the block', () => {
  fc.assert(
    fc.property(place, place, fc.double({ min: 0.7, max: 1, noNaN: true }), (winch, bow, e) => {
      const origin = { x_m: 0, y_m: 0 };
      fc.pre(far(winch, origin) && far(bow, origin));
      // Parts that undo each other leave the strap without a direction.
      const cosine = (winch.x_m * bow.x_m + winch.y_m * bow.y_m) / (Math.hypot(winch.x_m, winch.y_m) * Math.hypot(bow.x_m, bow.y_m));
      fc.pre(cosine > -0.99);
      const rigging: Rigging = {
        nodes: [{ name: 'winch', on: 'load', at: winch }, { name: 'block', on: 'free', at: origin, efficiency: exactly(e) }, { name: 'bow', on: 'load', at: bow }, { name: 'larch', on: 'ground', at: { x_m: 0.3, y_m: 0.1 } }],
        ropes: [{ name: 'line', path: ['winch', 'block', 'bow'] }, { name: 'strap', path: ['block', 'larch'] }],
        hauled: 'line',
      };
      const answer = answerTo(rigging);
      const larch = answer.nodes.find((node) => node.name === 'larch')!;
      expect(larch.load_N.low).toBeCloseTo(Math.sqrt(1 + e * e + 2 * e * cosine), 9);
      expect(answer.pull_N.low).toBeCloseTo(larch.load_N.low, 9);
      for (const node of answer.nodes) expect(node.residual_N).toBeLessThan(1e-9);
    }),
  );
});

test('twice the line pull is twice of everything', () => {
  fc.assert(
    fc.property(fc.array(efficiency, { minLength: 1, maxLength: 6 }), fc.double({ min: 1, max: 1e5, noNaN: true }), (blocks, pull) => {
      const once = answerTo(tackle(blocks, undefined), pull);
      const twice = answerTo(tackle(blocks, undefined), 2 * pull);
      once.parts.forEach((part, i) => expect(twice.parts[i]!.tension_N.high).toBeCloseTo(2 * part.tension_N.high, 6));
      once.nodes.forEach((node, i) => expect(twice.nodes[i]!.load_N.high).toBeCloseTo(2 * node.load_N.high, 6));
    }),
  );
});
