import { describe, expect, test } from 'vitest';
import { between, exactly, type Amount } from '../../src-core/units/amount.ts';
import { solveRigging, type RiggingAnswer, type RiggingDrive } from '../../src-core/mechanics/rigging.ts';
import { stepsTo, type Rigging, type RiggingNode, type RiggingRope } from '../../src-core/mechanics/rigging-plan.ts';

const at = (x_m: number, y_m: number) => ({ x_m, y_m });
const node = (name: string, on: RiggingNode['on'], where?: readonly [number, number], more: Partial<RiggingNode> = {}): RiggingNode => ({ name, on, ...(where === undefined ? {} : { at: at(...where) }), ...more });
const block = (efficiency: number): Partial<RiggingNode> => ({ efficiency: exactly(efficiency) });
const rope = (name: string, ...path: string[]): RiggingRope => ({ name, path });
const solve = (nodes: readonly RiggingNode[], ropes: readonly RiggingRope[], more: Partial<Rigging> = {}, drive: RiggingDrive = { linePull_N: exactly(1) }): RiggingAnswer => {
  const result = solveRigging({ nodes, ropes, hauled: 'line', ...more }, drive);
  if ('problems' in result) throw new Error(result.problems.map((problem) => problem.says).join('\n'));
  return result.answer;
};
const problemsOf = (nodes: readonly RiggingNode[], ropes: readonly RiggingRope[]): string[] => {
  const result = solveRigging({ nodes, ropes, hauled: 'line' }, { linePull_N: exactly(1) });
  return 'problems' in result ? result.problems.map((problem) => problem.problem) : [];
};
const loadOn = (answer: RiggingAnswer, name: string): number => answer.nodes.find((each) => each.name === name)!.load_N.low;
const tensionsIn = (answer: RiggingAnswer, name: string): number[] => answer.parts.filter((part) => part.rope === name).map((part) => Number(part.tension_N.low.toPrecision(9)));

// Line from the west over a block at the origin to the south; it pulls the block with 1 to the west and e to the south.
const corner = (e: number): RiggingNode[] => [node('winch', 'load', [-10, 0]), node('block', 'free', [0, 0], block(e)), node('bow', 'load', [0, -10])];
const line = rope('line', 'winch', 'block', 'bow');

describe('a block on a strap', () => {
  // √(1 + 0.81) along (1, 0.9), whatever direction the strap is drawn in, from which end it is written and which rope comes first.
  const larch = node('larch', 'ground', [3, 1]);
  test.each<[string, RiggingRope[]]>([
    ['written from the block', [line, rope('strap', 'block', 'larch')]],
    ['written from the tree', [line, rope('strap', 'larch', 'block')]],
    ['written before the line', [rope('strap', 'block', 'larch'), line]],
    ['written before the line, from the tree', [rope('strap', 'larch', 'block'), line]],
  ])('%s', (_, ropes) => {
    const answer = solve([...corner(0.9), larch], ropes);
    const tree = answer.nodes.find((each) => each.name === 'larch')!;
    expect(tree.load_N.low).toBeCloseTo(Math.sqrt(1.81), 12);
    expect(tree.x_N!.low).toBeCloseTo(-1, 12);
    expect(tree.y_N!.low).toBeCloseTo(-0.9, 12);
    expect(loadOn(answer, 'block')).toBeCloseTo(Math.sqrt(1.81), 12);
    expect(tensionsIn(answer, 'strap')).toEqual([Number(Math.sqrt(1.81).toPrecision(9))]);
    expect(tensionsIn(answer, 'line')).toEqual([1, 0.9]);
    expect(answer.nodes.every((each) => each.residual_N < 1e-12)).toBe(true);
  });
  test('that has no position of its own stands where its strap ends', () => {
    const [winch, , bow] = corner(0.9);
    for (const strap of [rope('strap', 'block', 'larch'), rope('strap', 'larch', 'block')]) {
      const answer = solve([winch!, node('block', 'free', undefined, block(0.9)), bow!, node('larch', 'ground', [0, 0])], [line, strap]);
      expect(answer.inPlan).toBe(true);
      expect(loadOn(answer, 'larch')).toBeCloseTo(Math.sqrt(1.81), 12);
    }
  });
});

test('a block that two straps hold: each takes its share, the block takes what the line makes of it', () => {
  const nodes = [...corner(0.9), node('east', 'ground', [7, 0]), node('north', 'ground', [0, 5])];
  const answer = solve(nodes, [line, rope('a', 'block', 'east'), rope('b', 'north', 'block')]);
  expect(loadOn(answer, 'east')).toBeCloseTo(1, 12);
  expect(loadOn(answer, 'north')).toBeCloseTo(0.9, 12);
  expect(loadOn(answer, 'block')).toBeCloseTo(Math.sqrt(1.81), 12);
});

test('a ring behind a block carries what the block lets through', () => {
  // Straight on behind a block of 0.9: the ring, and its legs at right angles to each other, carry 0.9 and 0.9 / √2.
  const nodes = [node('winch', 'load', [0, -4]), node('tree', 'ground', [0, 0], block(0.9)), node('ring', 'free', [4, 0]), node('p', 'load', [6, 2]), node('q', 'load', [6, -2])];
  const answer = solve(nodes, [rope('line', 'winch', 'tree', 'ring'), rope('a', 'ring', 'p'), rope('b', 'ring', 'q')]);
  expect(loadOn(answer, 'ring')).toBeCloseTo(0.9, 12);
  expect(loadOn(answer, 'p')).toBeCloseTo(0.9 * Math.SQRT1_2, 12);
});

describe('a bridle', () => {
  const ring = [node('winch', 'load', [0, 0]), node('ring', 'free', [5, 0])];
  test('leg that is not needed carries nothing', () => {
    const answer = solve([...ring, node('p', 'ground', [9, 0]), node('q', 'ground', [8, 2])], [rope('line', 'winch', 'ring'), rope('a', 'ring', 'p'), rope('b', 'ring', 'q')]);
    expect([loadOn(answer, 'p'), loadOn(answer, 'q')]).toEqual([1, 0]);
  });
  test('leg that would push goes slack, little as it is, and whichever rope it is', () => {
    // 10° and 100° off the pull: the second would push with sin 10° / sin 90° = 0.17 of it.
    const degree = Math.PI / 180;
    const legs = [node('p', 'ground', [5 + 4 * Math.cos(10 * degree), 4 * Math.sin(10 * degree)]), node('q', 'ground', [5 + 4 * Math.cos(100 * degree), 4 * Math.sin(100 * degree)])];
    const a = rope('a', 'ring', 'p');
    const b = rope('b', 'ring', 'q');
    for (const ropes of [[rope('line', 'winch', 'ring'), a, b], [b, a, rope('line', 'winch', 'ring')], [a, b, rope('line', 'winch', 'ring')]]) {
      const result = solveRigging({ nodes: [...ring, ...legs], ropes, hauled: 'line' }, { linePull_N: exactly(1) });
      expect(result).toMatchObject({ problems: [{ problem: 'slack-leg', about: ['b'] }] });
    }
  });
});

describe('without positions', () => {
  test('tackle on tackle on tackle: every part, block and free runner carries its product', () => {
    // Each runner makes 1.9 of its line; the last strap pulls 1.9 · 1.9.
    const nodes = [node('winch', 'ground'), node('r1', 'free', undefined, block(0.9)), node('tree1', 'ground'), node('r2', 'free', undefined, block(0.9)), node('tree2', 'ground'), node('bow', 'load')];
    const answer = solve(nodes, [rope('line', 'winch', 'r1', 'tree1'), rope('second', 'r1', 'r2', 'tree2'), rope('third', 'r2', 'bow')]);
    expect(answer.advantage.low).toBeCloseTo(3.61, 12);
    expect(tensionsIn(answer, 'line')).toEqual([1, 0.9]);
    expect(tensionsIn(answer, 'second')).toEqual([1.9, 1.71]);
    expect(tensionsIn(answer, 'third')).toEqual([3.61]);
    expect(loadOn(answer, 'r1')).toBeCloseTo(1.9, 12);
    expect(loadOn(answer, 'r2')).toBeCloseTo(3.61, 12);
    expect(loadOn(answer, 'tree1')).toBeCloseTo(0.9, 12);
    expect(loadOn(answer, 'tree2')).toBeCloseTo(1.71, 12);
    expect(loadOn(answer, 'bow')).toBeCloseTo(3.61, 12);
  });
  test('a held block on the second rope takes both of its parts', () => {
    const nodes = [node('winch', 'ground'), node('runner', 'free', undefined, block(0.9)), node('tree', 'ground'), node('block', 'load', undefined, block(0.9)), node('post', 'ground')];
    const answer = solve(nodes, [rope('line', 'winch', 'runner', 'tree'), rope('second', 'runner', 'block', 'post')]);
    // 1.9 and 0.9 · 1.9.
    expect(loadOn(answer, 'block')).toBeCloseTo(3.61, 12);
    expect(loadOn(answer, 'post')).toBeCloseTo(1.71, 12);
  });
});

describe('what comes out', () => {
  const straight = (winch: readonly [number, number], more: Partial<Rigging>, drive?: RiggingDrive) => solve([node('winch', 'ground', winch), node('bow', 'load', [0, 0])], [rope('line', 'winch', 'bow')], more, drive);
  test('a slanting pull on a slanting heading', () => {
    // (4, 3)/5 on (3, 4)/5: (12 + 12)/25 along, |16 − 9|/25 across, and the same from the other side.
    for (const [winch, heading] of [[[4, 3], at(3, 4)], [[3, 4], at(4, 3)]] as const) {
      const answer = straight(winch, { heading });
      expect(answer.pull_N.low).toBeCloseTo(0.96, 12);
      expect(answer.sideways_N.low).toBeCloseTo(0.28, 12);
    }
  });
  test('without a heading nothing is sideways', () => expect(straight([4, 3], {}).sideways_N).toEqual(exactly(0)));
  test('both ends of the line pull', () => {
    const answer = straight([4, 0], {}, { linePull_N: between(800, 1000) });
    const ends: Amount = { low: 800, high: 1000 };
    expect([answer.linePull_N, answer.pull_N, answer.parts[0]!.tension_N, answer.nodes[0]!.load_N, answer.nodes[0]!.x_N]).toEqual([ends, ends, ends, ends, { low: -1000, high: -800 }]);
  });
  test('a held point is never out of balance', () => expect(straight([4, 0], {}).nodes.map((each) => each.residual_N)).toEqual([0, 0]));
});

test('where a rope begins it runs over nothing, though a block stands there', () => {
  const answer = solve([node('winch', 'ground', undefined, block(0.9)), node('bow', 'load')], [rope('line', 'winch', 'bow')]);
  expect([tensionsIn(answer, 'line'), answer.advantage.low]).toEqual([[1], 1]);
});

describe('what can be, and what cannot', () => {
  test('a block on the load, line from the load to the ground over it', () => {
    expect(problemsOf([node('winch', 'load'), node('b', 'load', undefined, block(1)), node('tree', 'ground')], [rope('line', 'winch', 'b', 'tree')])).toEqual([]);
    expect(problemsOf([node('winch', 'ground'), node('b', 'load', undefined, block(1)), node('bow', 'load')], [rope('line', 'winch', 'b', 'bow')])).toEqual([]);
  });
  test('a rope that goes to one place twice running', () => {
    expect(problemsOf([node('winch', 'ground'), node('b', 'load', undefined, { ...block(1), sheaves: 2 }), node('tree', 'ground')], [rope('line', 'winch', 'b', 'b', 'tree')])).toContain('closed-chain');
  });
  test('what is nowhere is the only thing said', () => expect(problemsOf([node('winch', 'ground')], [rope('line', 'winch', 'bow')])).toEqual(['unknown-node']));
  test('a ring at the beginning of its only strap is loose', () => {
    expect(problemsOf([node('winch', 'ground'), node('bow', 'load'), node('ring', 'free')], [rope('line', 'winch', 'bow'), rope('strap', 'ring', 'bow')])).toEqual(['loose-end']);
  });
  test('a ring between two trees is not part of the pull, nor is one between two points of the load', () => {
    for (const on of ['ground', 'load'] as const) {
      expect(problemsOf([node('winch', 'ground'), node('bow', 'load'), node('ring', 'free'), node('p', on), node('q', on)], [rope('line', 'winch', 'bow'), rope('a', 'p', 'ring'), rope('b', 'ring', 'q')])).toEqual(['closed-chain']);
    }
  });
});

test('steps are counted over gear that is free, and end at what is held', () => {
  const nodes = [node('winch', 'ground'), node('a', 'free'), node('b', 'free'), node('bow', 'load'), node('tree', 'ground'), node('post', 'ground')];
  const rigging: Rigging = { nodes, ropes: [rope('line', 'winch', 'a'), rope('s', 'a', 'b'), rope('t', 'b', 'bow'), rope('u', 'bow', 'tree')], hauled: 'line' };
  expect(stepsTo(rigging, 'a', 'ground')).toBe(1);
  expect(stepsTo(rigging, 'a', 'load')).toBe(2);
  expect(stepsTo(rigging, 'winch', 'ground')).toBe(0);
  expect(stepsTo(rigging, 'bow', 'ground')).toBe(1);
  expect(stepsTo(rigging, 'tree', 'load')).toBe(1);
  expect(stepsTo({ ...rigging, ropes: [rope('line', 'a', 'tree'), rope('t', 'tree', 'bow')] }, 'a', 'load')).toBe(Infinity);
});
