import { describe, expect, test } from 'vitest';
import { exactly } from '../../src-core/units/amount.ts';
import { solveRigging, type RiggingAnswer, type RiggingDrive } from '../../src-core/mechanics/rigging.ts';
import type { Rigging, RiggingNode } from '../../src-core/mechanics/rigging-plan.ts';

const frictionless = exactly(1);
const at = (x_m: number, y_m: number) => ({ x_m, y_m });
const oneNewton: RiggingDrive = { linePull_N: exactly(1) };

const solve = (rigging: Rigging, drive: RiggingDrive = oneNewton): RiggingAnswer => {
  const result = solveRigging(rigging, drive);
  if ('problems' in result) throw new Error(result.problems.map((problem) => problem.says).join('\n'));
  return result.answer;
};
const problemsOf = (rigging: Rigging): string[] => {
  const result = solveRigging(rigging, oneNewton);
  return 'problems' in result ? result.problems.map((problem) => problem.problem) : [];
};
const loadOn = (answer: RiggingAnswer, name: string) => answer.nodes.find((node) => node.name === name)!;

const ground = (name: string, more: Partial<RiggingNode> = {}): RiggingNode => ({ name, on: 'ground', ...more });
const load = (name: string, more: Partial<RiggingNode> = {}): RiggingNode => ({ name, on: 'load', ...more });
const free = (name: string, more: Partial<RiggingNode> = {}): RiggingNode => ({ name, on: 'free', ...more });
const line = (...path: string[]) => ({ name: 'line', path });

describe('advantage without friction', () => {
  test('a straight pull', () => {
    const answer = solve({ nodes: [ground('winch'), load('bow')], ropes: [line('winch', 'bow')], hauled: 'line' });
    expect(answer.advantage).toEqual(exactly(1));
    expect(answer.pull_N).toEqual(exactly(1));
  });
  test('a redirect gains nothing', () => {
    const answer = solve({ nodes: [ground('winch'), ground('tree', { efficiency: frictionless }), load('bow')], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' });
    expect(answer.advantage).toEqual(exactly(1));
    expect(loadOn(answer, 'tree').load_N).toEqual(exactly(2));
  });
  test('a winch that pulls its own vehicle, line back to it: two to one', () => {
    const answer = solve({ nodes: [load('winch'), ground('tree', { efficiency: frictionless }), load('bow')], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' });
    expect(answer.advantage).toEqual(exactly(2));
    expect(loadOn(answer, 'tree').load_N).toEqual(exactly(2));
  });
  test('a block on the load, line back to the standing vehicle: two to one', () => {
    const answer = solve({ nodes: [ground('winch'), load('block', { efficiency: frictionless }), ground('bow')], ropes: [line('winch', 'block', 'bow')], hauled: 'line' });
    expect(answer.advantage).toEqual(exactly(2));
  });
  test.each([1, 2, 3, 4, 5, 6])('%d blocks in turn, on the load and on the ground', (blocks) => {
    const nodes = [ground('winch'), ...Array.from({ length: blocks }, (_, i) => (i % 2 === 0 ? load(`b${i}`, { efficiency: frictionless }) : ground(`b${i}`, { efficiency: frictionless }))), blocks % 2 === 0 ? load('end') : ground('end')];
    const answer = solve({ nodes, ropes: [line(...nodes.map((node) => node.name))], hauled: 'line' });
    expect(answer.advantage.low).toBeCloseTo(blocks + 1, 12);
  });
  test('a tackle on a tackle multiplies: two to one on two to one', () => {
    const nodes = [ground('winch'), free('runner', { efficiency: frictionless }), ground('tree'), load('block', { efficiency: frictionless }), ground('post')];
    const ropes = [line('winch', 'runner', 'tree'), { name: 'second', path: ['runner', 'block', 'post'] }];
    const answer = solve({ nodes, ropes, hauled: 'line' });
    expect(answer.advantage.low).toBeCloseTo(4, 12);
  });
  test('a block on a strap to the load: the strap carries both parts', () => {
    const nodes = [ground('winch'), free('block', { efficiency: frictionless }), ground('tree'), load('bow')];
    const answer = solve({ nodes, ropes: [line('winch', 'block', 'tree'), { name: 'strap', path: ['block', 'bow'] }], hauled: 'line' });
    expect(answer.advantage.low).toBeCloseTo(2, 12);
    expect(answer.parts.find((part) => part.rope === 'strap')!.tension_N.low).toBeCloseTo(2, 12);
    expect(loadOn(answer, 'block').load_N.low).toBeCloseTo(2, 12);
  });
});

describe('friction', () => {
  // Pipeline Rules of Thumb Handbook, p. 6: four parts, journal bearings of 91.7 %, 3,250 lb need 1,000 lb on the lead line.
  test('four parts behind plain sheaves pull 3.25 times', () => {
    const sheave = { efficiency: exactly(0.917), sheaves: 2 };
    const answer = solve(
      { nodes: [ground('winch'), ground('top', sheave), load('bottom', sheave)], ropes: [line('winch', 'top', 'bottom', 'top', 'bottom', 'top')], hauled: 'line' },
      { resistance_N: exactly(3250) },
    );
    expect(Math.abs(answer.advantage.low / 3.25 - 1)).toBeLessThan(0.005);
    expect(Math.abs(answer.linePull_N.low / 1000 - 1)).toBeLessThan(0.005);
  });
  // Wire Rope Users Manual, 4th ed., p. 88: plain bearings lose 9 % a sheave, so that the lead line of four parts carries 0.309
  // of the load; two extra lead sheaves make it 0.367, and 6,000 lb need 2,202 lb.
  test('four parts and two extra lead sheaves', () => {
    const sheave = { efficiency: exactly(1 / 1.09), sheaves: 2 };
    const nodes = [ground('winch'), ground('lead1', sheave), ground('lead2', sheave), ground('top', sheave), load('bottom', sheave)];
    const reeved = ['top', 'bottom', 'top', 'bottom', 'top'];
    const pull = (...lead: string[]) => solve({ nodes, ropes: [line('winch', ...lead, ...reeved)], hauled: 'line' }, { resistance_N: exactly(6000) }).linePull_N.low;
    expect(pull() / 6000).toBeCloseTo(0.309, 3);
    expect(pull('lead1', 'lead2') / 6000).toBeCloseTo(0.367, 3);
    expect(Math.abs(pull('lead1', 'lead2') - 2202)).toBeLessThan(3);
  });
  // Rigging supplier's handbook, p. 137: 72,480 lb with 8,000 lb of single line pull want a ratio of 9.06; twelve parts have 9.11.
  test('twelve bushed parts move 72,480 lb with 8,000 lb, eleven do not', () => {
    const needed = (parts: number) => {
      const sheave = { efficiency: exactly(1 / 1.045), sheaves: 12 };
      const path = ['winch', ...Array.from({ length: parts + 1 }, (_, i) => (i % 2 === 0 ? 'top' : 'bottom'))];
      return solve({ nodes: [ground('winch'), ground('top', sheave), load('bottom', sheave)], ropes: [line(...path)], hauled: 'line' }, { resistance_N: exactly(72_480) }).linePull_N.low;
    };
    expect(needed(12)).toBeLessThanOrEqual(8_000);
    expect(needed(11)).toBeGreaterThan(8_000);
  });
  test('efficiencies between two ends give every result between two ends', () => {
    const answer = solve({ nodes: [ground('winch'), load('block', { efficiency: { low: 0.9, high: 0.98 } }), ground('bow')], ropes: [line('winch', 'block', 'bow')], hauled: 'line' }, { resistance_N: { low: 1000, high: 2000 } });
    expect(answer.advantage).toEqual({ low: 1.9, high: 1.98 });
    expect(answer.linePull_N.low).toBeCloseTo(1000 / 1.98, 9);
    expect(answer.linePull_N.high).toBeCloseTo(2000 / 1.9, 9);
    expect(answer.pull_N.low).toBeCloseTo(1000, 9);
    expect(answer.pull_N.high).toBeCloseTo(2000, 9);
    const [first, second] = answer.parts;
    expect(first!.tension_N).toEqual(answer.linePull_N);
    expect(second!.tension_N.high).toBeCloseTo((2000 / 1.9) * 0.9 > (2000 / 1.98) * 0.98 ? (2000 / 1.9) * 0.9 : (2000 / 1.98) * 0.98, 9);
  });
});

describe('in plan', () => {
  test('a redirect at a right angle loads its block with 1.41 of the line pull, half way between the parts', () => {
    const answer = solve({ nodes: [ground('winch', { at: at(0, 0) }), ground('tree', { at: at(10, 0), efficiency: frictionless }), load('bow', { at: at(10, 8) })], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' });
    const tree = loadOn(answer, 'tree');
    expect(tree.load_N.low).toBeCloseTo(Math.SQRT2, 12);
    expect(tree.x_N!.low).toBeCloseTo(-1, 12);
    expect(tree.y_N!.low).toBeCloseTo(1, 12);
    expect(answer.pull_N.low).toBeCloseTo(1, 12);
  });
  // Rigging catalogues: 1,000 lb at 50° loads the block with 1,810 lb.
  test.each([[50, 1810], [135, 760], [120, 1000], [90, 1410]])('parts at %d° load their block with %d lb', (degrees, pounds) => {
    const half = (degrees / 2) * (Math.PI / 180);
    const answer = solve(
      { nodes: [ground('winch', { at: at(Math.cos(half), Math.sin(half)) }), ground('tree', { at: at(0, 0), efficiency: frictionless }), load('bow', { at: at(Math.cos(half), -Math.sin(half)) })], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' },
      { linePull_N: exactly(1000) },
    );
    expect(Math.abs(loadOn(answer, 'tree').load_N.low - pounds)).toBeLessThanOrEqual(10);
  });
  // Rigging supplier's text: 1,000 lb on two legs with 60° between them gives 577 lb a leg, with 90° 707 lb.
  test.each([[60, 577], [90, 707]])('a bridle with %d° between its legs carries %d lb a leg', (degrees, pounds) => {
    const half = (degrees / 2) * (Math.PI / 180);
    const nodes = [load('winch', { at: at(0, 0) }), free('ring', { at: at(10, 0) }), ground('larch', { at: at(10 + Math.cos(half), Math.sin(half)) }), ground('birch', { at: at(10 + Math.cos(half), -Math.sin(half)) })];
    const answer = solve({ nodes, ropes: [line('winch', 'ring'), { name: 'leg-a', path: ['ring', 'larch'] }, { name: 'leg-b', path: ['ring', 'birch'] }], hauled: 'line' }, { linePull_N: exactly(1000) });
    expect(loadOn(answer, 'larch').load_N.low).toBeCloseTo(pounds, -1);
    expect(Math.abs(loadOn(answer, 'larch').load_N.low - pounds)).toBeLessThan(0.5);
    expect(Math.abs(loadOn(answer, 'birch').load_N.low - pounds)).toBeLessThan(0.5);
    expect(loadOn(answer, 'ring').load_N.low).toBeCloseTo(1000, 9);
    expect(loadOn(answer, 'ring').residual_N).toBeLessThan(1e-9);
  });
  test('an uneven bridle: the leg nearer the pull carries more', () => {
    const nodes = [load('winch', { at: at(0, 0) }), free('ring', { at: at(10, 0) }), ground('near', { at: at(15, 1) }), ground('wide', { at: at(13, -4) })];
    const answer = solve({ nodes, ropes: [line('winch', 'ring'), { name: 'a', path: ['ring', 'near'] }, { name: 'b', path: ['ring', 'wide'] }], hauled: 'line' });
    expect(loadOn(answer, 'near').load_N.low).toBeGreaterThan(loadOn(answer, 'wide').load_N.low);
  });
  test('a block on a strap swings into line: the strap carries the resultant, whatever its drawn direction', () => {
    const nodes = (strapAt: [number, number]) => [load('winch', { at: at(0, 0) }), free('block', { at: at(10, 0), efficiency: frictionless }), load('bow', { at: at(0, 10) }), ground('larch', { at: at(...strapAt) })];
    for (const strapAt of [[11, 0], [11, -1]] as [number, number][]) {
      const answer = solve({ nodes: nodes(strapAt), ropes: [line('winch', 'block', 'bow'), { name: 'strap', path: ['block', 'larch'] }], hauled: 'line' });
      const resultant = Math.hypot(1 + Math.SQRT1_2, Math.SQRT1_2);
      expect(loadOn(answer, 'larch').load_N.low).toBeCloseTo(resultant, 12);
      expect(loadOn(answer, 'larch').x_N!.low).toBeCloseTo(-1 - Math.SQRT1_2, 12);
      expect(loadOn(answer, 'larch').y_N!.low).toBeCloseTo(Math.SQRT1_2, 12);
      expect(loadOn(answer, 'block').load_N.low).toBeCloseTo(resultant, 12);
    }
  });
  test('a line joined to an extension by a shackle between them, drawn off the straight or not at all', () => {
    for (const joint of [free('joint', { at: at(6, 2) }), free('joint')]) {
      const nodes = [load('winch', { at: at(0, 0) }), joint, ground('larch', { at: at(12, 4) })];
      const answer = solve({ nodes, ropes: [line('winch', 'joint'), { name: 'tail', path: ['joint', 'larch'] }], hauled: 'line' });
      expect(answer.inPlan).toBe(true);
      expect(loadOn(answer, 'larch').load_N.low).toBeCloseTo(1, 12);
      expect(loadOn(answer, 'joint').load_N.low).toBeCloseTo(1, 12);
      expect(loadOn(answer, 'larch').x_N!.low).toBeCloseTo(-12 / Math.hypot(12, 4), 12);
    }
  });
  test('a tackle on a tackle in plan: the second rope carries what the runner makes of the first', () => {
    const nodes = [ground('winch', { at: at(0, 0) }), free('runner', { at: at(20, 1), efficiency: exactly(0.9) }), ground('tree', { at: at(0, 2) }), load('block', { at: at(30, 1), efficiency: exactly(0.9) }), ground('post', { at: at(0, 1) })];
    const answer = solve({ nodes, ropes: [line('winch', 'runner', 'tree'), { name: 'second', path: ['runner', 'block', 'post'] }], hauled: 'line' });
    expect(answer.advantage.low).toBeLessThan(1.9 * 1.9);
    expect(answer.advantage.low).toBeGreaterThan(1.9 * 1.9 * 0.99);
    expect(loadOn(answer, 'runner').residual_N).toBeLessThan(1e-12);
  });
  test('a pull off the heading counts along it, and the rest is taken sideways', () => {
    const answer = solve({ nodes: [ground('winch', { at: at(3, 4) }), load('bow', { at: at(0, 0) })], ropes: [line('winch', 'bow')], hauled: 'line', heading: at(2, 0) }, { linePull_N: exactly(1000) });
    expect(answer.pull_N.low).toBeCloseTo(600, 9);
    expect(answer.sideways_N.low).toBeCloseTo(800, 9);
    expect(answer.advantage.low).toBeCloseTo(0.6, 12);
  });
  test('without positions a held block takes the most that any angle makes of its parts', () => {
    const answer = solve({ nodes: [ground('winch'), ground('tree', { efficiency: exactly(0.9) }), load('bow')], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' });
    expect(answer.inPlan).toBe(false);
    expect(answer.withoutPosition).toEqual(['winch', 'tree', 'bow']);
    expect(loadOn(answer, 'tree').load_N.low).toBeCloseTo(1.9, 12);
    expect(loadOn(answer, 'tree').x_N).toBeUndefined();
  });
});

describe('what cannot be', () => {
  const block = { efficiency: frictionless };
  test.each<[string, Rigging, string]>([
    ['a name that is nowhere', { nodes: [ground('winch')], ropes: [line('winch', 'bow')], hauled: 'line' }, 'unknown-node'],
    ['no rope of the hauled name', { nodes: [ground('winch'), load('bow')], ropes: [line('winch', 'bow')], hauled: 'tail' }, 'unknown-node'],
    ['no anchor', { nodes: [load('winch'), load('bow')], ropes: [line('winch', 'bow')], hauled: 'line' }, 'no-anchor'],
    ['no load', { nodes: [ground('winch'), ground('tree')], ropes: [line('winch', 'tree')], hauled: 'line' }, 'no-load'],
    ['a line made fast to its own winch', { nodes: [load('winch'), ground('tree', block)], ropes: [line('winch', 'tree', 'winch')], hauled: 'line' }, 'closed-chain'],
    ['one sheave used twice', { nodes: [load('winch'), ground('tree', block), load('b', block), load('bow')], ropes: [line('winch', 'tree', 'b', 'tree', 'bow')], hauled: 'line' }, 'block-used-twice'],
    ['rope over what is no block', { nodes: [load('winch'), ground('tree'), load('bow')], ropes: [line('winch', 'tree', 'bow')], hauled: 'line' }, 'rope-over-no-block'],
    ['a block that moves with both ends of its rope', { nodes: [load('winch'), load('b', block), load('bow'), ground('tree')], ropes: [line('winch', 'b', 'bow')], hauled: 'line' }, 'block-cannot-move'],
    ['a rope with one end', { nodes: [ground('winch'), load('bow')], ropes: [line('winch')], hauled: 'line' }, 'loose-end'],
    ['a ring with gear on one side', { nodes: [ground('winch'), load('bow'), free('ring')], ropes: [line('winch', 'bow'), { name: 'strap', path: ['bow', 'ring'] }], hauled: 'line' }, 'loose-end'],
    ['straps that hold only each other', { nodes: [ground('winch'), load('bow'), free('a'), free('b')], ropes: [line('winch', 'bow'), { name: 's', path: ['a', 'b'] }, { name: 't', path: ['b', 'a'] }], hauled: 'line' }, 'closed-chain'],
    ['a bridle without positions', { nodes: [load('winch'), free('ring'), ground('p'), ground('q')], ropes: [line('winch', 'ring'), { name: 'a', path: ['ring', 'p'] }, { name: 'b', path: ['ring', 'q'] }], hauled: 'line' }, 'positions-needed'],
    [
      'three legs in plan',
      { nodes: [load('winch', { at: at(0, 0) }), free('ring', { at: at(5, 0) }), ground('p', { at: at(8, 2) }), ground('q', { at: at(8, 0) }), ground('r', { at: at(8, -2) })], ropes: [line('winch', 'ring'), ...['p', 'q', 'r'].map((name) => ({ name, path: ['ring', name] }))], hauled: 'line' },
      'not-determined',
    ],
    ['a leg that would push', { nodes: [load('winch', { at: at(0, 0) }), free('ring', { at: at(5, 0) }), ground('p', { at: at(8, 1) }), ground('q', { at: at(8, 2) })], ropes: [line('winch', 'ring'), { name: 'a', path: ['ring', 'p'] }, { name: 'b', path: ['ring', 'q'] }], hauled: 'line' }, 'slack-leg'],
    ['two points in the same place', { nodes: [ground('winch', { at: at(1, 1) }), load('bow', { at: at(1, 1) })], ropes: [line('winch', 'bow')], hauled: 'line' }, 'same-place'],
    ['a pull away from the heading', { nodes: [ground('winch', { at: at(-5, 0) }), load('bow', { at: at(0, 0) })], ropes: [line('winch', 'bow')], hauled: 'line', heading: at(1, 0) }, 'load-not-pulled'],
    ['a strap between held points that nothing hauls', { nodes: [ground('winch'), ground('tree'), load('bow')], ropes: [line('winch', 'tree'), { name: 'strap', path: ['tree', 'bow'] }], hauled: 'line' }, 'not-determined'],
  ])('%s', (_, rigging, problem) => expect(problemsOf(rigging)).toContain(problem));

  test('a ring drawn where it cannot rest', () => {
    const nodes = [ground('winch', { at: at(0, 0) }), free('ring', { at: at(5, 3) }), load('bow', { at: at(5, 10) })];
    expect(problemsOf({ nodes: [...nodes, free('other', { at: at(9, 9) })], ropes: [line('winch', 'ring'), { name: 'a', path: ['ring', 'other'] }, { name: 'b', path: ['other', 'bow'] }], hauled: 'line' })).toEqual(['out-of-line']);
  });
});
