import type { PlanScene } from './plan-scene.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface PlacedBody extends Point {
  /** Which way it looks, in degrees clockwise from the right. */
  readonly turn: number;
}

export interface PlanLayout {
  readonly nodes: readonly Point[];
  readonly bodies: readonly PlacedBody[];
  readonly forks: readonly Point[];
  /** Coordinates for one metre; undefined where it is not to scale. */
  readonly perMetre: number | undefined;
}

const loadX = 206;
const groundX = 520;
const rowGap = 92;
const outward = 74;
/** Every fork on the way to a body takes it so much farther. */
const outwardByFork = 62;
/** Rope and gear that share one place are drawn side by side. */
const beside = 34;

/** Where everything is drawn: to scale by the places that are written, else the load on the left and what stands on the right. */
export function planLayout(scene: PlanScene): PlanLayout {
  const scale = scene.isPlaced ? scaleOf(scene) : undefined;
  const nodes = scale === undefined ? inColumns(scene) : apart(scene, scene.nodes.map((n) => ({ x: n.at!.ahead * scale, y: -n.at!.left * scale })));
  const bodies = placedBodies(scene, nodes);
  return { nodes, bodies, forks: placedForks(scene, nodes, bodies), perMetre: scale };
}

function scaleOf({ nodes }: PlanScene): number | undefined {
  const [xs, ys] = [nodes.map((n) => n.at!.ahead), nodes.map((n) => n.at!.left)];
  const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  const scale = Math.min(330 / wide, 300 / high);
  return Number.isFinite(scale) && scale > 0 ? scale : undefined;
}

/** Two columns: what moves, and what stands; each from top to bottom in the order of the line. */
function inColumns({ nodes }: PlanScene): Point[] {
  const of = (moves: boolean): number[] => nodes.flatMap((n, i) => (n.moves === moves ? [i] : []));
  const points: Point[] = [];
  for (const [column, x] of [[of(true), loadX], [of(false), groundX]] as const) {
    column.forEach((node, row) => (points[node] = { x, y: (row - (column.length - 1) / 2) * rowGap }));
  }
  return points;
}

/** Nodes of one place are moved apart across the way of the load. */
function apart({ nodes }: PlanScene, points: readonly Point[]): Point[] {
  return points.map((p, i) => {
    const same = points.flatMap((q, k) => (Math.hypot(q.x - p.x, q.y - p.y) < 20 && nodes[k]!.moves === nodes[i]!.moves ? [k] : []));
    return { x: p.x, y: p.y + (same.indexOf(i) - (same.length - 1) / 2) * beside };
  });
}

/** The forks on the way to a fastening's body, from the last one back to the node. */
function forksTo({ forks }: PlanScene, last: number | undefined): number[] {
  const passed: number[] = [];
  for (let fork = last; fork !== undefined; fork = forks[fork]!.before) passed.push(fork);
  return passed;
}

/** A fork stands half way from where its gear begins to the middle of what holds behind it. */
function placedForks(scene: PlanScene, nodes: readonly Point[], bodies: readonly Point[]): Point[] {
  const placed: Point[] = [];
  scene.forks.forEach(({ node, before }, i) => {
    const from = before === undefined ? nodes[node]! : placed[before]!;
    const held = scene.fastenings.filter((f) => forksTo(scene, f.fork).includes(i)).map((f) => bodies[f.body]!);
    let at = { x: (from.x + mean(held.map((b) => b.x))) / 2, y: (from.y + mean(held.map((b) => b.y))) / 2 };
    while (placed.some((p) => Math.hypot(p.x - at.x, p.y - at.y) < 16)) at = { x: at.x, y: at.y + 16 };
    placed.push(at);
  });
  return placed;
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

/** The way in which the line pulls at a node, as a unit vector; zero where its parts pull against each other. */
function pullAt(nodes: readonly Point[], i: number): Point {
  let [x, y] = [0, 0];
  for (const k of [i - 1, i + 1]) {
    const other = nodes[k];
    if (other === undefined) continue;
    const length = Math.hypot(other.x - nodes[i]!.x, other.y - nodes[i]!.y) || 1;
    x += (other.x - nodes[i]!.x) / length;
    y += (other.y - nodes[i]!.y) / length;
  }
  const length = Math.hypot(x, y);
  return length < 0.05 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
}

/** What holds stands on the far side of its nodes from the pull; a load looks the way it is to go. */
function placedBodies(scene: PlanScene, nodes: readonly Point[]): PlacedBody[] {
  const { bodies, fastenings } = scene;
  const placed: PlacedBody[] = [];
  bodies.forEach((body, i) => {
    const own = fastenings.filter((f) => f.body === i);
    const held = own.map((f) => f.node);
    const out = outward + outwardByFork * Math.max(0, ...own.map((f) => forksTo(scene, f.fork).length));
    const [x, y] = [mean(held.map((n) => nodes[n]!.x)), mean(held.map((n) => nodes[n]!.y))];
    const pulls = held.map((n) => pullAt(nodes, n));
    const [px, py] = [mean(pulls.map((p) => p.x)), mean(pulls.map((p) => p.y))];
    const length = Math.hypot(px, py);
    const way = body.isLoad || length < 0.05 ? { x: body.moves ? 1 : -1, y: 0 } : { x: px / length, y: py / length };
    let at = { x: x - way.x * out, y: y - way.y * out };
    // A bridle has one end of the line and two holders: they stand side by side.
    const shares = fastenings.filter((f) => held.includes(f.node)).map((f) => f.body);
    const siblings = [...new Set(shares)];
    if (siblings.length > 1) {
      const off = (siblings.indexOf(i) - (siblings.length - 1) / 2) * (siblings.length > 2 ? 118 : 84);
      at = { x: at.x - way.y * off, y: at.y + way.x * off };
    }
    for (let tries = 0; tries < 8 && placed.some((p) => Math.hypot(p.x - at.x, p.y - at.y) < 62); tries++) at = { x: at.x - way.x * 30 + way.y * 40, y: at.y - way.y * 30 + way.x * 40 };
    placed.push({ ...at, turn: (Math.atan2(way.y, way.x) * 180) / Math.PI });
  });
  return placed;
}
