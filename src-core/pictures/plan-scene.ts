import { isAbove, isBelow } from '../base/compare.ts';
import type { AssessedPull, Loaded } from '../assess/assess-pull.ts';
import { holderOf, standsIn, type Holder } from '../assess/pull-rigging.ts';
import type { Run } from '../assess/pull-run.ts';
import { isUnknown, mostOf } from '../mechanics/derivation.ts';
import { nameOf } from '../model/bound.ts';

/** A point that the line runs from, over or to. */
export interface PlanNode {
  readonly role: 'winch' | 'block' | 'end';
  readonly name: string;
  /** Moves with the load. */
  readonly moves: boolean;
  /** In metres from the load, ahead and to the left; undefined where it is not written. */
  readonly at: PlanPoint | undefined;
  readonly loaded: Loaded | undefined;
  /** What leads from it to a fork. */
  readonly gear: readonly Loaded[];
}

export interface PlanPoint {
  readonly ahead: number;
  readonly left: number;
}

/** What holds the line or its gear: a vehicle or an anchor. */
export interface PlanBody {
  readonly name: string;
  /** `vehicle`, the word of an anchor's kind, or undefined where that is not written. */
  readonly form: string | undefined;
  readonly moves: boolean;
  readonly loaded: Loaded | undefined;
  readonly at: PlanPoint | undefined;
  readonly isLoad: boolean;
}

/** A point behind a node at which gear forks once more; the first fork is the node itself. */
export interface PlanFork {
  readonly node: number;
  /** The fork from which `gear` leads to it; undefined for the node. */
  readonly before: number | undefined;
  readonly gear: readonly Loaded[];
}

/** Gear between a node, or a fork behind it, and the body that holds it. */
export interface PlanFastening {
  readonly node: number;
  readonly fork: number | undefined;
  readonly body: number;
  readonly gear: readonly Loaded[];
  /** The recovery point that is used. */
  readonly point: Loaded | undefined;
}

export interface PlanScene {
  readonly nodes: readonly PlanNode[];
  readonly bodies: readonly PlanBody[];
  readonly forks: readonly PlanFork[];
  readonly fastenings: readonly PlanFastening[];
  /** Loaded gear that leads to nothing that holds. */
  readonly loose: readonly Loaded[];
  /** Every node has a place in plan. */
  readonly isPlaced: boolean;
}

/** What is known of a load against its limit. */
export type Standing = 'within' | 'over' | 'either' | 'not known';

/** While a part of the resistance is not known, every load may be more: then nothing is within its limit yet. */
export function standingOf({ load, limit, doubt }: Loaded, { incomplete }: AssessedPull): Standing {
  const most = mostOf(limit);
  if (isUnknown(load) || most === undefined) return 'not known';
  if (isUnknown(limit)) return isAbove(load.amount.high, most.amount.low) ? 'over' : 'not known';
  if (!isAbove(load.amount.high, limit.amount.low)) return incomplete === undefined && doubt === undefined ? 'within' : 'not known';
  return isBelow(limit.amount.high, load.amount.low) ? 'over' : 'either';
}

/** What the line of a pull touches, in its order, and what holds that. */
export function planScene(pull: AssessedPull): PlanScene {
  const { rigging, winch, run, resistance } = pull;
  const stands = new Map([...standsIn(pull.block)].map(([name, { x_m, y_m }]): [string, PlanPoint] => [name, { ahead: x_m, left: y_m }]));
  const origin: PlanPoint = { ahead: 0, left: 0 };
  const placeOf = (moves: boolean, ...names: (string | undefined)[]): PlanPoint | undefined => {
    for (const name of names) if (name !== undefined && stands.has(name)) return stands.get(name);
    return moves && stands.size > 0 ? origin : undefined;
  };
  const nodes: PlanNode[] = [];
  const bodies: PlanBody[] = [];
  const forks: PlanFork[] = [];
  const fastenings: PlanFastening[] = [];
  const loadedAs = (sort: Loaded['sort'], name: string): Loaded | undefined => pull.loaded.find((l) => l.sort === sort && l.name === name);

  const bodyOf = (name: string, form: string | undefined, moves: boolean, isLoad: boolean): number => {
    const known = bodies.findIndex((b) => b.name === name);
    if (known >= 0) return known;
    return bodies.push({ name, form, moves, isLoad, loaded: loadedAs('anchor', name), at: placeOf(moves, name) }) - 1;
  };
  const holderBody = ({ name, sort, block, vehicle }: Holder, moves: boolean): number => {
    // What moves is drawn as the vehicle that it is, whatever the pull calls it.
    if (moves && vehicle !== undefined) return bodyOf(vehicle, 'vehicle', moves, vehicle === resistance.vehicleName);
    const kind = loadedAs('anchor', name)?.anchor?.form ?? block?.statements.find((s) => s.definition.head === 'kind')?.values.get('kind');
    const form = sort === 'vehicle' ? 'vehicle' : typeof kind === 'string' ? kind : kind?.type === 'word' ? kind.word : undefined;
    return bodyOf(name, form, moves, name === resistance.vehicleName);
  };
  const loadBody = (): number => bodyOf(resistance.vehicleName ?? 'load', resistance.vehicleName === undefined ? 'load' : 'vehicle', true, true);
  const gearOf = (of: Run | undefined): Loaded[] => (of?.links ?? []).flatMap((link) => pull.loaded.find((l) => l.link === link) ?? []);
  const fasten = (node: number, body: number, of: Run | undefined, called: string | undefined, fork?: number): void => void fastenings.push({ node, fork, body, gear: gearOf(of), point: called === undefined ? undefined : loadedAs('point', called) });
  const fastenLegs = (node: number, { legs }: Run, moves: boolean, fork?: number): void => {
    for (const leg of legs) {
      const holder = holderOf(leg);
      if (holder !== undefined) fasten(node, holderBody(holder, moves), leg, holder.called, fork);
      else if (isForked(leg)) fastenLegs(node, leg, moves, forks.push({ node, before: fork, gear: gearOf(leg) }) - 1);
    }
  };

  const winchVehicle = winch === undefined ? undefined : nameOf(winch.block.header, 'vehicle')?.name;
  nodes.push({ role: 'winch', name: winch?.name ?? 'winch', moves: rigging.winchMoves, at: placeOf(rigging.winchMoves, winch?.name, winchVehicle), loaded: undefined, gear: [] });
  if (winchVehicle !== undefined) fasten(0, bodyOf(winchVehicle, 'vehicle', rigging.winchMoves, winchVehicle === resistance.vehicleName), undefined, undefined);

  for (const b of rigging.blocks) {
    const moves = b.moves === 'load';
    const forked = isForked(b.run);
    const node = nodes.push({ role: 'block', name: b.name, moves, at: placeOf(moves, b.name, b.holder?.name), loaded: pull.loaded.find((l) => l.sort === 'block' && l.name === b.name && l.place === b.place), gear: forked ? gearOf(b.run) : [] }) - 1;
    if (forked) fastenLegs(node, b.run!, moves);
    else if (b.holder !== undefined) fasten(node, holderBody(b.holder, moves), b.run, b.holder.called);
    else if (moves) fasten(node, loadBody(), b.run, undefined);
  }

  const forked = isForked(run);
  const end = holderOf(run) ?? endHolder(pull);
  const endName = forked ? 'bridle' : (end?.name ?? (rigging.endMoves ? 'load' : 'end'));
  const node = nodes.push({ role: 'end', name: endName, moves: rigging.endMoves, at: placeOf(rigging.endMoves, end?.name ?? run?.legs.flatMap((leg) => holderOf(leg)?.name ?? [])[0]), loaded: undefined, gear: forked ? gearOf(run) : [] }) - 1;
  if (forked) fastenLegs(node, run!, rigging.endMoves);
  else if (end !== undefined) fasten(node, holderBody(end, rigging.endMoves), run, end.called);
  else if (rigging.endMoves) fasten(node, loadBody(), run, undefined);
  const drawn = new Set([...nodes, ...forks, ...fastenings].flatMap(({ gear }) => gear.map((l) => l.link)));
  const loose = pull.loaded.filter((l) => l.link !== undefined && !drawn.has(l.link) && !isOnWinch(l, pull));
  return { nodes, bodies, forks, fastenings, loose, isPlaced: stands.size > 0 && nodes.every((n) => n.at !== undefined) };
}

/** Whether a run forks and something holds behind it. */
const isForked = (run: Run | undefined): boolean => run !== undefined && run.legs.some((leg) => leg.holder !== undefined || isForked(leg));

/** Whether it is the winch's own line, which is drawn by itself. */
export const isOnWinch = ({ link }: Loaded, { line }: AssessedPull): boolean => link?.piece !== undefined && link.piece.name === line?.name;

/** The end as `back-to` names it, where no chain leads to it. */
function endHolder(pull: AssessedPull): Holder | undefined {
  const back = pull.block.statements.find((s) => s.definition.head === 'back-to');
  const target = back === undefined ? undefined : nameOf(back.values, 'target');
  if (target === undefined) return undefined;
  const held = pull.loaded.find((l) => l.name === target.name && (l.sort === 'anchor' || l.sort === 'point'));
  const isVehicle = target.name === pull.resistance.vehicleName || (held !== undefined && held.anchor === undefined && held.vehicle !== undefined);
  return { name: target.name, called: target.name, sort: isVehicle ? 'vehicle' : 'anchor', place: target.place, block: undefined, vehicle: isVehicle ? (held?.vehicle?.name ?? target.name) : undefined, point: undefined };
}
