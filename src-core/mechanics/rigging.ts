import { isNear } from '../base/compare.ts';
import type { Amount } from '../units/amount.ts';
import { riggingProblems, stepsTo, type PlanPosition, type Rigging, type RiggingNode, type RiggingProblem, type RiggingRope } from './rigging-plan.ts';
import { solveLinear } from './solve-linear.ts';

/** What drives the rigging: a pull at the winch, or a resistance that has to be overcome. */
export type RiggingDrive = { readonly linePull_N: Amount } | { readonly resistance_N: Amount };

export interface PartTension {
  readonly rope: string;
  readonly from: string;
  readonly to: string;
  readonly tension_N: Amount;
}

export interface NodeLoad {
  readonly name: string;
  /** How hard the gear pulls on it: the load on a block, shackle, point or anchor. */
  readonly load_N: Amount;
  /** The same as a vector in plan; none without positions. */
  readonly x_N?: Amount;
  readonly y_N?: Amount;
  /** Sum of the forces at a free node: nothing, but for rounding. */
  readonly residual_N: number;
}

export interface RiggingAnswer {
  /** False when positions are missing: then every part counts as lying along the pull. */
  readonly inPlan: boolean;
  /** Nodes whose position would be needed for directions. */
  readonly withoutPosition: readonly string[];
  readonly parts: readonly PartTension[];
  readonly nodes: readonly NodeLoad[];
  /** Pull on the load for one of line pull. */
  readonly advantage: Amount;
  readonly linePull_N: Amount;
  /** Pull on the load, along its heading where one is given. */
  readonly pull_N: Amount;
  /** Pull across the heading, which the load has to take sideways. */
  readonly sideways_N: Amount;
}

export type RiggingResult = { readonly answer: RiggingAnswer } | { readonly problems: readonly RiggingProblem[] };

interface Vector {
  readonly x: number;
  readonly y: number;
}

/** A straight piece between two nodes. `share` is its tension over the tension at the rope's hauled end. */
interface Part {
  readonly rope: number;
  readonly from: string;
  readonly to: string;
  readonly share: number;
  /** Unit vector from `from` to `to`; zero where it is not known. */
  readonly way: Vector;
}

interface Evaluation {
  readonly parts: readonly Part[];
  /** Tension at each rope's hauled end for one newton of line pull. */
  readonly tensions: readonly number[];
}

const add = (a: Vector, b: Vector): Vector => ({ x: a.x + b.x, y: a.y + b.y });
const times = (a: Vector, k: number): Vector => ({ x: a.x * k, y: a.y * k });
const size = (a: Vector): number => Math.hypot(a.x, a.y);
const zero: Vector = { x: 0, y: 0 };

/** What lies next to the end of a rope that is made fast at a node. */
const besideEnd = (rope: RiggingRope, name: string): string | undefined => (rope.path[0] === name ? rope.path[1] : rope.path.at(-1) === name ? rope.path.at(-2) : undefined);

/**
 * The one strap or rope's end that carries a free node, when nothing but one other rope pulls on it. Such a node swings
 * until both lie in line, so the direction of what carries it follows from the forces and not from where it is drawn.
 */
function carryingLeg(rigging: Rigging, node: RiggingNode): number | undefined {
  if (node.on !== 'free') return undefined;
  const touching = rigging.ropes.flatMap((rope, i) => (rope.path.includes(node.name) ? [i] : []));
  if (touching.length !== 2) return undefined;
  return touching.findLast((index) => {
    const rope = rigging.ropes[index]!;
    const beside = besideEnd(rope, node.name);
    if (beside === undefined || rope.name === rigging.hauled || rope.path.slice(1, -1).includes(node.name)) return false;
    return rigging.nodes.find((candidate) => candidate.name === beside)?.on !== 'free';
  });
}

/** Positions for directions: the given ones, a carried block standing at the far end of its strap when it has none. */
function positionsOf(rigging: Rigging): { positions: Map<string, Vector>; missing: string[] } {
  const positions = new Map<string, Vector>();
  const missing: string[] = [];
  const reached = new Set(rigging.ropes.flatMap((rope) => rope.path));
  const given = (name: string | undefined): PlanPosition | undefined => rigging.nodes.find((node) => node.name === name)?.at;
  for (const node of rigging.nodes) {
    if (!reached.has(node.name)) continue;
    const leg = carryingLeg(rigging, node);
    const at = node.at ?? (leg === undefined ? undefined : given(besideEnd(rigging.ropes[leg]!, node.name)));
    if (at === undefined) missing.push(node.name);
    else positions.set(node.name, { x: at.x_m, y: at.y_m });
  }
  if (missing.length === 0) return { positions, missing };
  // Along the pull: the load at nought, the ground at one, free gear between them by how near it is to either.
  for (const node of rigging.nodes) {
    const toLoad = node.on === 'load' ? 0 : node.on === 'ground' ? 1 : stepsTo(rigging, node.name, 'load');
    const toGround = node.on === 'ground' ? 0 : node.on === 'load' ? 1 : stepsTo(rigging, node.name, 'ground');
    positions.set(node.name, { x: toLoad / (toLoad + toGround), y: 0 });
  }
  return { positions, missing };
}

function partsOf(rigging: Rigging, positions: ReadonlyMap<string, Vector>, end: 'low' | 'high'): Part[] {
  return rigging.ropes.flatMap((rope, index) => {
    let share = 1;
    return rope.path.slice(1).map((to, i): Part => {
      const from = rope.path[i]!;
      if (i > 0) share *= rigging.nodes.find((node) => node.name === from)?.efficiency?.[end] ?? 1;
      const a = positions.get(from)!;
      const b = positions.get(to)!;
      const between = add(b, times(a, -1));
      const length = size(between);
      return { rope: index, from, to, share, way: length === 0 ? zero : times(between, 1 / length) };
    });
  });
}

/** What one newton at a rope's hauled end puts on a node, by rope; `leave` is a rope that does not count. */
function pullsOn(name: string, parts: readonly Part[], ropes: number, leave?: number): Vector[] {
  const pulls: Vector[] = Array.from({ length: ropes }, () => zero);
  for (const part of parts) {
    if (part.rope === leave) continue;
    if (part.from === name) pulls[part.rope] = add(pulls[part.rope]!, times(part.way, part.share));
    if (part.to === name) pulls[part.rope] = add(pulls[part.rope]!, times(part.way, -part.share));
  }
  return pulls;
}

function evaluate(rigging: Rigging, positions: ReadonlyMap<string, Vector>, inPlan: boolean, end: 'low' | 'high'): Evaluation | RiggingProblem {
  let parts = partsOf(rigging, positions, end);
  const ropes = rigging.ropes.length;
  const hauled = rigging.ropes.findIndex((rope) => rope.name === rigging.hauled);
  const unit = (index: number, value: number): number[] => Array.from({ length: ropes }, (_, i) => (i === index ? value : 0));
  const rows: number[][] = [unit(hauled, 1)];
  const right: number[] = [1];
  const about: string[] = [rigging.hauled];
  for (const node of rigging.nodes) {
    if (node.on !== 'free') continue;
    const leg = inPlan ? carryingLeg(rigging, node) : undefined;
    if (leg !== undefined) {
      // A block on a strap swings until the strap lies in line with its load.
      const pulls = pullsOn(node.name, parts, ropes, leg);
      const over = pulls.findIndex((pull) => size(pull) > 0);
      if (over < 0) return { problem: 'block-cannot-move', says: `the rope pulls \`${node.name}\` nowhere: its two parts undo each other`, about: [node.name] };
      const strength = size(pulls[over]!);
      const away = times(pulls[over]!, -1 / strength);
      const carries = (part: Part): boolean => part.rope === leg && (part.from === node.name || part.to === node.name);
      const share = parts.find(carries)!.share;
      parts = parts.map((part) => (carries(part) ? { ...part, way: part.from === node.name ? away : times(away, -1) } : part));
      rows.push(unit(leg, share).map((value, i) => value - (i === over ? strength : 0)));
      right.push(0);
      about.push(node.name);
      continue;
    }
    const pulls = pullsOn(node.name, parts, ropes);
    for (const axis of inPlan ? (['x', 'y'] as const) : (['x'] as const)) {
      rows.push(pulls.map((pull) => pull[axis]));
      right.push(0);
      about.push(node.name);
    }
  }
  const same = inPlan ? parts.find((part) => size(part.way) === 0) : undefined;
  if (same !== undefined) {
    return { problem: 'same-place', says: `\`${same.from}\` and \`${same.to}\` stand in the same place: the part between them has no direction`, about: [same.from, same.to] };
  }
  const solved = solveLinear(rows, right);
  if ('undetermined' in solved) {
    const rope = rigging.ropes[solved.undetermined]!.name;
    if (!inPlan) return { problem: 'positions-needed', says: `how much \`${rope}\` carries depends on where things stand: positions are needed`, about: [rope] };
    return { problem: 'not-determined', says: `how much \`${rope}\` carries is not settled by statics: more legs hold than are needed, or nothing pulls on it`, about: [rope] };
  }
  if ('contradicted' in solved) {
    const name = about[solved.contradicted]!;
    return { problem: 'out-of-line', says: `\`${name}\` cannot rest where it is drawn: the forces on it do not add up to nothing there`, about: [name] };
  }
  const slack = solved.unknowns.findIndex((tension) => tension < -1e-9);
  if (slack >= 0) return { problem: 'slack-leg', says: `\`${rigging.ropes[slack]!.name}\` would have to push: it goes slack, and the rest takes another shape`, about: [rigging.ropes[slack]!.name] };
  return { parts, tensions: solved.unknowns.map((tension) => Math.max(0, tension)) };
}

/** The force of the gear on a node for one newton of line pull. */
function forceOn(name: string, { parts, tensions }: Evaluation): Vector {
  return pullsOn(name, parts, tensions.length).reduce((sum, pull, rope) => add(sum, times(pull, tensions[rope]!)), zero);
}

/** Without directions a held block takes the sum of its parts, the most that any angle can make of them. */
const sumAt = (name: string, { parts, tensions }: Evaluation): number =>
  parts.reduce((sum, part) => sum + (part.from === name || part.to === name ? part.share * tensions[part.rope]! : 0), 0);

/** On a free node without directions: what pulls it towards the load, which equals what pulls it to the ground. */
function throughAt(name: string, { parts, tensions }: Evaluation): number {
  const pulls = parts.flatMap((part) => (part.from === name ? [part.way.x] : part.to === name ? [-part.way.x] : []).map((way) => way * part.share * tensions[part.rope]!));
  return pulls.reduce((sum, pull) => sum + Math.max(0, pull), 0);
}

/** In plan, on a free block: what the rope that runs over it makes of its two parts. On a ring: its hardest-pulling part. */
function loadOnFree(rigging: Rigging, node: RiggingNode, { parts, tensions }: Evaluation): number {
  const touching = parts.filter((part) => part.from === node.name || part.to === node.name);
  const over = touching.filter((part) => rigging.ropes[part.rope]!.path.slice(1, -1).includes(node.name));
  if (over.length === 0) return Math.max(0, ...touching.map((part) => part.share * tensions[part.rope]!));
  return size(over.reduce((sum, part) => add(sum, times(part.way, (part.from === node.name ? 1 : -1) * part.share * tensions[part.rope]!)), zero));
}

/**
 * Tension in every part, load on every node, and the pull on the load.
 * The rope loses tension over each block, away from its hauled end; ropes and straps weigh nothing; turning of the load is
 * left to its tyres. Efficiencies are taken all at their low and all at their high ends.
 */
export function solveRigging(rigging: Rigging, drive: RiggingDrive): RiggingResult {
  const problems = riggingProblems(rigging);
  if (problems.length > 0) return { problems };
  const { positions, missing } = positionsOf(rigging);
  const inPlan = missing.length === 0;
  const results: Evaluation[] = [];
  for (const end of ['low', 'high'] as const) {
    const result = evaluate(rigging, positions, inPlan, end);
    if ('problem' in result) return { problems: [result] };
    results.push(result);
  }
  return answerOf(rigging, drive, results, inPlan, missing);
}

function answerOf(rigging: Rigging, drive: RiggingDrive, results: readonly Evaluation[], inPlan: boolean, missing: readonly string[]): RiggingResult {
  const heading = inPlan && rigging.heading !== undefined ? { x: rigging.heading.x_m, y: rigging.heading.y_m } : undefined;
  const pulls = results.map((result) => {
    const force = rigging.nodes.filter((node) => node.on === 'load').reduce((sum, node) => add(sum, forceOn(node.name, result)), zero);
    if (heading === undefined || size(heading) === 0) return { along: inPlan ? size(force) : force.x, across: 0 };
    const way = times(heading, 1 / size(heading));
    return { along: force.x * way.x + force.y * way.y, across: Math.abs(force.x * way.y - force.y * way.x) };
  });
  if (pulls.some(({ along }) => !(along > 1e-9))) {
    return { problems: [{ problem: 'load-not-pulled', says: 'the pull on the load comes out as nothing, or away from where it is meant to go: it cannot move', about: [] }] };
  }
  // Line pull that each end of the drive means, at each end of the efficiencies.
  const scales = pulls.map(({ along }) => ('linePull_N' in drive ? [drive.linePull_N.low, drive.linePull_N.high] : [drive.resistance_N.low / along, drive.resistance_N.high / along]));
  const range = (value: (result: Evaluation, index: number) => number): Amount => {
    const all = results.flatMap((result, i) => scales[i]!.map((scale) => value(result, i) * scale));
    return { low: Math.min(...all), high: Math.max(...all) };
  };
  const loadOn = (node: RiggingNode, result: Evaluation): number => {
    if (node.on === 'free') return inPlan ? loadOnFree(rigging, node, result) : throughAt(node.name, result);
    return inPlan ? size(forceOn(node.name, result)) : sumAt(node.name, result);
  };
  const reached = new Set(rigging.ropes.flatMap((rope) => rope.path));
  const nodes = rigging.nodes
    .filter((node) => reached.has(node.name))
    .map((node): NodeLoad => ({
      name: node.name,
      load_N: range((result) => loadOn(node, result)),
      ...(inPlan && node.on !== 'free' ? { x_N: range((result) => forceOn(node.name, result).x), y_N: range((result) => forceOn(node.name, result).y) } : {}),
      residual_N: node.on === 'free' ? range((result) => size(forceOn(node.name, result))).high : 0,
    }));
  const parts = results[0]!.parts.map((part, p): PartTension => ({
    rope: rigging.ropes[part.rope]!.name,
    from: part.from,
    to: part.to,
    tension_N: range((result) => result.parts[p]!.share * result.tensions[part.rope]!),
  }));
  return {
    answer: {
      inPlan,
      withoutPosition: missing,
      parts,
      nodes,
      advantage: ordered(pulls.map(({ along }) => along)),
      linePull_N: range(() => 1),
      pull_N: range((_, i) => pulls[i]!.along),
      sideways_N: range((_, i) => pulls[i]!.across),
    },
  };
}

const ordered = (values: readonly number[]): Amount => {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return isNear(low, high) ? { low, high: low } : { low, high };
};
