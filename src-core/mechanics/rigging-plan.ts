import type { Amount } from '../units/amount.ts';

/** A place in plan. Any origin and any two square axes will do. */
export interface PlanPosition {
  readonly x_m: number;
  readonly y_m: number;
}

/**
 * A point where rope ends, or a block where it passes.
 * `ground` does not move: trees, buried logs, and the winch's own vehicle while it stands. `load` moves with the load.
 * `free` is held by nothing but the gear itself: a block on a strap, the ring of a bridle.
 */
export interface RiggingNode {
  readonly name: string;
  readonly on: 'ground' | 'load' | 'free';
  /** Share of the tension that passes, where rope runs over it. Only a block has it. */
  readonly efficiency?: Amount | undefined;
  /** How many ropes or bights a block can take. One when not said. */
  readonly sheaves?: number | undefined;
  readonly at?: PlanPosition | undefined;
}

/** A rope, strap or bridle leg: from its hauled end, over blocks, to where it is made fast. */
export interface RiggingRope {
  readonly name: string;
  readonly path: readonly string[];
}

export interface Rigging {
  readonly nodes: readonly RiggingNode[];
  readonly ropes: readonly RiggingRope[];
  /** The rope that the winch hauls; its path begins at the winch. */
  readonly hauled: string;
  /** Where the load is meant to go; without it the pull counts in whatever direction it comes out. */
  readonly heading?: PlanPosition | undefined;
}

export type RiggingProblemName =
  | 'unknown-node'
  | 'no-anchor'
  | 'no-load'
  | 'closed-chain'
  | 'block-used-twice'
  | 'rope-over-no-block'
  | 'block-cannot-move'
  | 'loose-end'
  | 'same-place'
  | 'slack-leg'
  | 'positions-needed'
  | 'not-determined'
  | 'out-of-line'
  | 'load-not-pulled';

/** Why a rigging has no answer. Nothing downstream may pretend to a number. */
export interface RiggingProblem {
  readonly problem: RiggingProblemName;
  readonly says: string;
  /** The nodes and ropes it is about. */
  readonly about: readonly string[];
}

const problem = (name: RiggingProblemName, says: string, ...about: string[]): RiggingProblem => ({ problem: name, says, about });

/** What is wrong with the rigging before any force is asked for. Empty when it can be worked out. */
export function riggingProblems(rigging: Rigging): RiggingProblem[] {
  const found: RiggingProblem[] = [];
  const nodes = new Map(rigging.nodes.map((node) => [node.name, node]));
  const passes = new Map<string, number>();
  const reached = new Set<string>();
  if (!rigging.ropes.some((rope) => rope.name === rigging.hauled)) found.push(problem('unknown-node', `there is no rope \`${rigging.hauled}\` to haul`, rigging.hauled));
  for (const rope of rigging.ropes) {
    const missing = rope.path.find((name) => !nodes.has(name));
    if (missing !== undefined) {
      found.push(problem('unknown-node', `\`${rope.name}\` goes to \`${missing}\`, which is nowhere`, rope.name, missing));
      continue;
    }
    if (rope.path.length < 2) {
      found.push(problem('loose-end', `\`${rope.name}\` is made fast to nothing`, rope.name));
      continue;
    }
    if (rope.path[0] === rope.path.at(-1) || rope.path.some((name, i) => name === rope.path[i + 1])) {
      found.push(problem('closed-chain', `\`${rope.name}\` comes back to where it began and pulls only on itself`, rope.name));
    }
    for (const name of rope.path) reached.add(name);
    for (let i = 1; i < rope.path.length - 1; i++) {
      const node = nodes.get(rope.path[i]!)!;
      passes.set(node.name, (passes.get(node.name) ?? 0) + 1);
      if (node.efficiency === undefined) found.push(problem('rope-over-no-block', `\`${rope.name}\` runs over \`${node.name}\`, which is no block`, rope.name, node.name));
      const before = nodes.get(rope.path[i - 1]!)!;
      const after = nodes.get(rope.path[i + 1]!)!;
      if (node.on === 'load' && before.on === 'load' && after.on === 'load') {
        found.push(problem('block-cannot-move', `\`${node.name}\` moves with the load, and so do both points its rope comes from and goes to: it cannot gain anything`, node.name));
      }
    }
  }
  for (const [name, times] of passes) {
    const sheaves = nodes.get(name)!.sheaves ?? 1;
    if (times > sheaves) found.push(problem('block-used-twice', `\`${name}\` has ${sheaves === 1 ? 'one sheave' : `${sheaves} sheaves`} and the line runs over it ${times === 2 ? 'twice' : `${times} times`}`, name));
  }
  if (found.length > 0) return found;
  const used = rigging.nodes.filter((node) => reached.has(node.name));
  if (!used.some((node) => node.on === 'ground')) found.push(problem('no-anchor', 'nothing in this rigging stands on the ground: there is no anchor to pull against'));
  if (!used.some((node) => node.on === 'load')) found.push(problem('no-load', 'nothing in this rigging is fast to the load'));
  for (const rope of rigging.ropes) {
    if (rope.name === rigging.hauled || rope.path.some((name) => nodes.get(name)!.on === 'free')) continue;
    found.push(problem('not-determined', `\`${rope.name}\` is fast at both ends and nothing hauls it: how much it carries is not settled`, rope.name));
  }
  found.push(...unheld(rigging, used));
  return found;
}

/** Free nodes that no chain of gear leads from to the ground, or none to the load. */
function unheld(rigging: Rigging, used: readonly RiggingNode[]): RiggingProblem[] {
  const found: RiggingProblem[] = [];
  for (const node of used) {
    if (node.on !== 'free') continue;
    const parts = rigging.ropes.flatMap((rope) => rope.path.flatMap((name, i) => (name === node.name ? [rope.path[i - 1], rope.path[i + 1]] : []))).filter((name) => name !== undefined);
    if (parts.length < 2) found.push(problem('loose-end', `\`${node.name}\` has gear on one side only and holds nothing`, node.name));
    else if (stepsTo(rigging, node.name, 'ground') === Infinity || stepsTo(rigging, node.name, 'load') === Infinity) {
      found.push(problem('closed-chain', `the gear at \`${node.name}\` leads back to itself: neither the ground nor the load holds it`, node.name));
    }
  }
  return found;
}

/** How many parts of gear lie between a node and the nearest one on the ground or on the load. */
export function stepsTo(rigging: Rigging, from: string, on: 'ground' | 'load'): number {
  const nodes = new Map(rigging.nodes.map((node) => [node.name, node]));
  const seen = new Set([from]);
  let edge = [from];
  for (let steps = 0; edge.length > 0; steps++) {
    if (edge.some((name) => nodes.get(name)?.on === on)) return steps;
    const next: string[] = [];
    for (const name of edge) {
      // What is held does not hand its pull on: gear beyond it does not count.
      if (steps > 0 && nodes.get(name)?.on !== 'free') continue;
      for (const rope of rigging.ropes) {
        rope.path.forEach((other, i) => {
          if (other !== name) return;
          for (const beside of [rope.path[i - 1], rope.path[i + 1]]) {
            if (beside === undefined || seen.has(beside)) continue;
            seen.add(beside);
            next.push(beside);
          }
        });
      }
    }
    edge = next;
  }
  return Infinity;
}
