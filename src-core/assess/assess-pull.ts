import { isBelow } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { armyEstimate, type ArmyEstimate } from '../mechanics/army-estimate.ts';
import { blockLoadWithFriction } from '../mechanics/block-load-with-friction.ts';
import { bridleLegTension } from '../mechanics/bridle-leg-tension.ts';
import { asGiven, isUnknown, unknown, type Cause, type Derived, type Given, type Known, type Unknown, type Value } from '../mechanics/derivation.ts';
import { leadLinePull } from '../mechanics/lead-line-pull.ts';
import { lineStretch } from '../mechanics/line-stretch.ts';
import { standOffFrom } from '../mechanics/stand-off-distance.ts';
import { storedEnergy } from '../mechanics/stored-energy.ts';
import { tensionInPart } from '../mechanics/tension-in-part.ts';
import { tensionInUse } from '../mechanics/tension-in-use.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { nameOf, quantityOf, wordOf, type BoundBlock, type Problem } from '../model/bound.ts';
import { loadsAddUp } from '../trade/plan-sources.ts';
import { sources } from '../trade/sources.ts';
import { assessWinch, carriedName, type AssessedWinch } from './assess-winch.ts';
import type { AssessedAnchor } from './assess-anchor.ts';
import type { AssessedChain, AssessedLink } from './assess-chain.ts';
import type { AssessedPiece } from './assess-line.ts';
import type { AssessedVehicle } from './assess-vehicle.ts';
import type { Assessing } from './assessing.ts';
import { maybeFact, missingFact, statementOf, writtenValue } from './facts.ts';
import { reachOf, type PullReach } from './pull-reach.ts';
import { resistanceOf, type PullResistance } from './pull-resistance.ts';
import { efficiencyOf, holderOf, riggingOf, type Holder, type PullBlock, type PullRigging } from './pull-rigging.ts';
import { allLinks, runFromGear, runFromLine, type Run } from './pull-run.ts';

export type LoadedSort = 'line' | 'link' | 'block' | 'point' | 'anchor';

/** Something that the pull loads, with what it may take. */
export interface Loaded {
  readonly sort: LoadedSort;
  /** As the file calls it: `main outboard`, `snatch`, `plover bow`. */
  readonly name: string;
  /** Where the pull names it, or the chain through which it comes. */
  readonly place: Place;
  /** Where the thing itself stands in the file. */
  readonly own: Place | undefined;
  readonly load: Value;
  readonly limit: Value;
  /** How the limit was got, when nobody wrote it. */
  readonly limitSays: string | undefined;
  readonly breaking: Value | undefined;
  readonly link: AssessedLink | undefined;
  readonly anchor: AssessedAnchor | undefined;
  readonly vehicle: AssessedVehicle | undefined;
}

export interface AssessedPull {
  readonly kind: 'pull';
  readonly block: BoundBlock;
  readonly name: string;
  readonly winch: AssessedWinch | undefined;
  /** Why there is no winch to speak of. */
  readonly winchCause: Cause | undefined;
  readonly chain: AssessedChain | undefined;
  readonly line: AssessedPiece | undefined;
  readonly run: Run | undefined;
  readonly resistance: PullResistance;
  readonly rigging: PullRigging;
  readonly reach: PullReach;
  readonly layer: Value;
  /** Pull of the winch on the layer in use. */
  readonly available: Value;
  /** Line pull that the load needs, as far as its resistance is known. */
  readonly needed: Value;
  /** Tension at the winch: what is needed, and never more than the winch pulls. */
  readonly tension: Value;
  /** Tension in each part of the line, in the order of `rigging.parts`. */
  readonly tensions: readonly Value[];
  readonly loaded: readonly Loaded[];
  /** The army's estimate, beside our own. */
  readonly army: Known<ArmyEstimate>;
  /** Least distance of everybody who does not run the winch. */
  readonly standOff: Derived;
  readonly people: Value | undefined;
  /** Only where the line's stretch is written. */
  readonly energy: Derived | undefined;
  /** Facts that would make the resistance larger. */
  readonly incomplete: Cause | undefined;
  readonly problems: readonly Problem[];
}

export function assessPull(block: BoundBlock, assessing: Assessing): AssessedPull {
  const name = block.name ?? 'pull';
  const { reader } = assessing;
  const through = nameOf(block.header, 'chain');
  const chainFound = through === undefined ? undefined : reader.find(through.name, ['chain']);
  const chain = chainFound === undefined ? undefined : assessing.chain(chainFound.block);
  const { winch, cause: winchCause } = winchOf(block, chain, assessing);
  // A chain that hangs on another winch is said to; its line is no extension for that.
  const lineName = chain?.winch === undefined ? (winch === undefined ? undefined : carriedName(winch.block)) : carriedName(chain.winch.block);
  const run = chain === undefined ? undefined : runFromLine(chain, lineName);
  const resistance = resistanceOf(block, assessing);
  const endPlace = through?.place ?? statementOf(block, 'back-to')?.place ?? block.namePlace;
  const { end, cause: endCause } = endOf(block, through, chain, run, assessing);
  // A chain that closes on itself is said at the chain.
  const closed: Cause | undefined = run?.closedAt === undefined ? undefined : { key: `chain of ${name}`, says: 'its chain closes on itself', help: 'correct it', place: endPlace, reported: true };
  const rigging = riggingOf({
    block,
    winch: winch?.name ?? 'winch',
    line: lineName ?? 'line',
    winchVehicle: winch === undefined ? undefined : nameOf(winch.block.header, 'vehicle')?.name,
    loadVehicle: resistance.vehicleName,
    blocks: block.statements.flatMap((statement) => blockOf(statement, chain, assessing)),
    end,
    endPlace,
    endCause: endCause ?? closed,
  });
  const reach = reachOf(block, rigging, run, lineName);
  const atWork = winch === undefined ? undefined : winch.at(reach.lineOut);
  const nothing = noLineLeft(winch, winchCause, reach, block);
  const available = nothing ?? asGiven(atWork!.pull);
  const needed = asGiven(leadLinePull({ R: resistance.atLeast, MA: rigging.advantage }));
  const tension = isUnknown(available) || isUnknown(needed) ? needed : asGiven(tensionInUse({ T_n: needed, F_n: available }));
  const tensions = rigging.parts.map((part, i) => (i === 0 ? tension : asGiven(tensionInPart({ s: part.share, T: tension }))));
  const line = winch?.piece;
  return {
    kind: 'pull', block, name, winch, winchCause, chain, line, run, resistance, rigging, reach,
    layer: nothing ?? asGiven(atWork!.layer), available, needed, tension, tensions,
    loaded: loadedBy({ block, winch, line, run, rigging, tensions, tension, end, endPlace, chain }, assessing),
    army: isUnknown(available) ? available : armyEstimate(resistance.total, available),
    standOff: standOff(line, run, name, block),
    people: maybeFact(block, 'people'),
    energy: energyIn(block, tension, reach.lineOut),
    incomplete: resistance.incomplete,
    problems: [...rigging.problems, ...reach.problems],
  };
}

/** Why no layer is in use: no winch, or a reach that takes more line than there is, which is said of the reach. */
function noLineLeft(winch: AssessedWinch | undefined, winchCause: Cause | undefined, reach: PullReach, block: BoundBlock): Unknown | undefined {
  if (winchCause !== undefined) return unknown(winchCause);
  const { lineOut } = reach;
  if (winch === undefined || isUnknown(lineOut) || isUnknown(winch.length) || isBelow(lineOut.amount.high, winch.length.amount.low)) return undefined;
  return unknown({ key: `line left in ${block.name ?? 'pull'}`, says: `the reach of \`${block.name ?? 'pull'}\` takes all the line there is`, help: 'add an extension, or start nearer', place: statementOf(block, 'reach')?.place, reported: true });
}

function winchOf(block: BoundBlock, chain: AssessedChain | undefined, assessing: Assessing): { winch: AssessedWinch | undefined; cause: Cause | undefined } {
  const named = nameOf(block.header, 'winch');
  const found = named === undefined ? undefined : assessing.reader.find(named.name, ['winch']);
  if (found === undefined) {
    const key = `winch of ${block.name ?? 'pull'}`;
    return { winch: undefined, cause: { key, says: named === undefined ? 'the winch that pulls is not given' : `\`${named.name}\` is not known`, help: 'write `with` and the winch', place: named?.place ?? block.headPlace, reported: true } };
  }
  const winch = assessing.winch(found.block);
  // After a repair the winch carries what the repair leaves of its line.
  const carried = carriedName(found.block);
  const left = chain?.repair === undefined || carried === undefined ? undefined : assessing.repaired(chain.repair)?.after.pieces.get(carried);
  return { winch: left === undefined || left === winch.piece ? winch : assessWinch(found.block, left, assessing.practice), cause: undefined };
}

function endOf(block: BoundBlock, through: { readonly name: string; readonly place: Place } | undefined, chain: AssessedChain | undefined, run: Run | undefined, assessing: Assessing): { end: Holder | undefined; cause: Cause | undefined } {
  if (through !== undefined && chain === undefined) return { end: undefined, cause: { key: `name ${through.name}`, says: `\`${through.name}\` is not known`, help: 'declare it as a `chain`', place: through.place, reported: true } };
  const odd = run === undefined ? undefined : allLinks(run).find((link) => link.sort === 'other' && isUnknown(link.workingLimit) && link.workingLimit.unknown.reported === true);
  if (odd !== undefined && isUnknown(odd.workingLimit)) return { end: undefined, cause: odd.workingLimit.unknown };
  if (chain !== undefined && [...chain.block.statements].some((s) => s.broken.has('route'))) return { end: undefined, cause: { key: `route of ${chain.name}`, says: `a route of \`${chain.name}\` cannot be read`, help: 'correct it', place: chain.block.namePlace, reported: true } };
  const fromRun = holderOf(run) ?? holderOf(run?.legs.find((leg) => leg.holder !== undefined));
  if (fromRun !== undefined) return { end: fromRun, cause: undefined };
  const back = statementOf(block, 'back-to');
  if (block.brokenHeads.has('back-to') || (back !== undefined && back.broken.size > 0)) return { end: undefined, cause: { ...missingFact(block, 'back-to'), reported: true } };
  const named = back === undefined ? undefined : nameOf(back.values, 'target');
  return named === undefined ? { end: undefined, cause: undefined } : namedHolder(named, assessing);
}

/** An anchor or a vehicle by name alone: which of a vehicle's points is used is then not known. */
function namedHolder(named: { readonly name: string; readonly place: Place }, assessing: Assessing): { end: Holder | undefined; cause: Cause | undefined } {
  const found = assessing.reader.find(named.name, ['anchor', 'vehicle']);
  if (found === undefined) return { end: undefined, cause: { key: `name ${named.name}`, says: `\`${named.name}\` is not known`, help: 'declare it', place: named.place, reported: true } };
  const isVehicle = found.kind === 'vehicle';
  const point = isVehicle ? unknown({ key: `point at ${named.name} ${named.place.start}`, says: `which recovery point of \`${named.name}\` is used is not given`, help: `end a route of the chain at it, such as \`${named.name} bow\``, place: named.place }) : undefined;
  return { end: { name: named.name, called: named.name, sort: isVehicle ? 'vehicle' : 'anchor', place: named.place, block: found.block, point }, cause: undefined };
}

function blockOf(statement: BoundBlock['statements'][number], chain: AssessedChain | undefined, assessing: Assessing): Omit<PullBlock, 'angle' | 'doubles'>[] {
  if (statement.definition.head !== 'via') return [];
  const named = nameOf(statement.values, 'block');
  const word = wordOf(statement.values, 'moves');
  if (named === undefined || word === undefined) return [];
  const found = assessing.reader.find(named.name, ['block']);
  const on = nameOf(statement.values, 'anchor');
  const direct = on === undefined ? undefined : assessing.reader.find(on.name, ['anchor', 'vehicle']);
  const run = chain === undefined ? undefined : (runFromGear(chain, named.name, false) ?? (on !== undefined && direct === undefined ? runFromGear(chain, on.name, true) : undefined));
  const holder = holderOf(run) ?? (on === undefined || direct === undefined ? undefined : namedHolder(on, assessing).end);
  return [{ statement, place: statement.place, name: named.name, block: found?.block, moves: word === 'travelling' ? 'load' : 'ground', efficiency: efficiencyOf(found?.block, named.name, named.place, assessing.practice), run, holder }];
}

interface LoadingInput {
  readonly block: BoundBlock;
  readonly winch: AssessedWinch | undefined;
  readonly line: AssessedPiece | undefined;
  readonly run: Run | undefined;
  readonly rigging: PullRigging;
  readonly tensions: readonly Value[];
  readonly tension: Value;
  readonly end: Holder | undefined;
  readonly endPlace: Place;
  readonly chain: AssessedChain | undefined;
}

/** Everything the pull loads: line, gear, blocks, points, anchors, in the order from the winch. */
function loadedBy(input: LoadingInput, assessing: Assessing): Loaded[] {
  const { rigging, run, tensions, winch, endPlace } = input;
  const found: Loaded[] = [];
  const base = { own: undefined, limitSays: undefined, breaking: undefined, link: undefined, anchor: undefined, vehicle: undefined };
  const last = tensions.at(-1) ?? input.tension;
  const onHolders = new Map<string, { holder: Holder; place: Place; loads: Value[] }>();
  const hold = (holder: Holder | undefined, place: Place, load: Value): void => {
    if (holder === undefined) return;
    const known = onHolders.get(holder.called);
    if (known === undefined) onHolders.set(holder.called, { holder, place, loads: [load] });
    else known.loads.push(load);
  };
  const link = (of: AssessedLink, load: Value, place: Place): void => {
    found.push({ ...base, sort: of.sort === 'line' ? 'line' : 'link', name: of.name, place, own: of.place, load, limit: of.workingLimit, limitSays: of.limitSays, breaking: of.breaking, link: of });
  };
  if (input.line !== undefined && (run === undefined || !allLinks(run).some((l) => l.piece?.name === input.line!.name))) {
    const { line } = input;
    found.push({ ...base, sort: 'line', name: line.name, place: endPlace, own: line.named, load: input.tension, limit: limitOfLine(line, assessing), limitSays: 'line factor', breaking: line.strength });
  }
  for (const of of run?.links ?? []) link(of, of.piece !== undefined && of.piece.name === input.line?.name ? input.tension : last, endPlace);
  const legs = run?.legs ?? [];
  if (legs.length > 0) {
    const leg = legTension(input.block, legs.length, last);
    for (const one of legs) {
      for (const of of one.links) link(of, leg, endPlace);
      hold(holderOf(one), endPlace, leg);
    }
  } else hold(input.end, endPlace, last);
  for (const [i, b] of rigging.blocks.entries()) {
    const load = loadOnBlock(b, rigging, tensions[i]!, input.tension);
    const gear = b.block === undefined ? undefined : assessing.gear(b.block);
    const missing = unknown({ key: `name ${b.name}`, says: `\`${b.name}\` is not known`, help: 'declare it as a `block`', place: b.place, reported: true });
    found.push({ ...base, sort: 'block', name: b.name, place: b.place, own: b.block?.namePlace, load, limit: gear?.workingLimit ?? missing, limitSays: gear === undefined || gear.limitFrom === 'written' ? undefined : gear.limitFrom, breaking: gear?.breakingStrength });
    for (const of of b.run?.links ?? []) link(of, load, b.place);
    if (b.holder !== undefined) hold(b.holder, b.place, load);
    else if (!rigging.problems.length) found.push({ ...base, sort: b.moves === 'ground' ? 'anchor' : 'point', name: `what holds \`${b.name}\``, place: b.place, load, limit: unknown({ key: `holder of ${b.name} at ${b.place.start}`, says: `what holds \`${b.name}\` is not given`, help: 'write `on` and the anchor, or a route of the chain that begins with the block', place: b.place }) });
  }
  for (const { holder, place, loads } of onHolders.values()) found.push(...onHolder(holder, place, sumOf(loads, holder.called), input, assessing));
  found.push(...winchVehicle(winch, rigging, input, assessing));
  return found;
}

/** Working limit of a piece that no link of a chain speaks of. */
function limitOfLine(line: AssessedPiece, assessing: Assessing): Value {
  const byFactor = asGiven(workingLimitFromBreaking({ MBL: line.strength, f: assessing.practice.value('line-factor') }));
  const { working } = line.line;
  if (working === undefined || isUnknown(byFactor)) return byFactor;
  return isUnknown(working) || working.amount.low < byFactor.amount.low ? working : byFactor;
}

/** A winch whose own vehicle stands makes that vehicle an anchor. */
function winchVehicle(winch: AssessedWinch | undefined, rigging: PullRigging, input: LoadingInput, assessing: Assessing): Loaded[] {
  const named = winch === undefined || rigging.winchMoves || rigging.problems.length > 0 ? undefined : nameOf(winch.block.header, 'vehicle');
  const found = named === undefined ? undefined : assessing.reader.find(named.name, ['vehicle']);
  if (found === undefined) return [];
  const vehicle = assessing.vehicle(found.block);
  return [{ sort: 'anchor', name: vehicle.name, place: nameOf(input.block.header, 'winch')?.place ?? input.endPlace, own: found.place, load: input.tension, limit: asGiven(vehicle.holds), limitSays: 'braked vehicle', breaking: undefined, link: undefined, anchor: undefined, vehicle }];
}

function onHolder(holder: Holder, place: Place, load: Value, input: LoadingInput, assessing: Assessing): Loaded[] {
  const base = { place, own: holder.place, breaking: undefined, link: undefined, anchor: undefined, vehicle: undefined, load };
  if (holder.sort === 'vehicle') {
    const vehicle = holder.block === undefined ? undefined : assessing.vehicle(holder.block);
    const point: Loaded = { ...base, sort: 'point', name: holder.called, limit: holder.point!, limitSays: undefined, vehicle };
    // A vehicle that moves with the load holds nothing; one that stands is an anchor, braked.
    const winchVehicle = input.winch === undefined ? undefined : nameOf(input.winch.block.header, 'vehicle')?.name;
    const moves = vehicle === undefined || holder.name === nameOf(statementOf(input.block, 'load')?.values ?? new Map(), 'vehicle')?.name || (input.rigging.winchMoves && holder.name === winchVehicle);
    if (moves || holder.name === winchVehicle) return [point];
    return [point, { ...base, sort: 'anchor', name: holder.name, limit: asGiven(vehicle.holds), limitSays: 'braked vehicle', vehicle }];
  }
  const anchor = holder.block === undefined ? undefined : assessing.anchor(holder.block);
  const limit = anchor?.holding ?? unknown({ key: `name ${holder.name}`, says: `\`${holder.name}\` is not known`, help: 'declare it', place: holder.place, reported: true });
  return [{ ...base, sort: 'anchor', name: holder.name, limit, limitSays: anchor === undefined || anchor.holdingFrom === 'written' ? undefined : anchor.holdingFrom, anchor, vehicle: anchor?.vehicle }];
}

/** Load on a block: by the plan, else by the angle between its parts. */
function loadOnBlock(b: PullBlock, rigging: PullRigging, before: Value, tension: Value): Value {
  const node = rigging.plan?.nodes.find((n) => n.name === b.name);
  if (node === undefined) return asGiven(blockLoadWithFriction({ T: before, e: b.efficiency, θ: b.angle }));
  if (isUnknown(b.efficiency)) return b.efficiency;
  if (isUnknown(tension)) return tension;
  return asGiven({
    calculation: 'block-load-in-plan', means: `load on \`${b.name}\` by the plan`, symbol: 'P', kind: 'load', formula: 'P = p T',
    amount: { low: node.load_N.low * tension.amount.low, high: node.load_N.high * tension.amount.high },
    inputs: [{ symbol: 'p', meaning: 'load on it for one of line pull, from the places of what stands about it', given: { amount: node.load_N, kind: 'count', origin: { from: 'constant', source: sources.statics } } }, { symbol: 'T', meaning: 'tension in the line at the winch', given: tension }],
    sources: [sources.statics], assumptions: ['places as written'], notes: [],
  });
}

function legTension(block: BoundBlock, legs: number, pull: Value): Value {
  const statement = statementOf(block, 'bridle');
  const angle = statement === undefined ? undefined : quantityOf(statement.values, 'bridle');
  const cause = missingFact(block, 'bridle');
  if (legs !== 2) return unknown({ key: `legs of ${block.name ?? 'pull'}`, says: `a bridle of ${legs} legs is not settled by statics: the stiffest leg takes most`, help: 'use two legs', place: block.namePlace });
  return angle === undefined ? unknown(cause.reported === true ? cause : { ...cause, says: `the angle between the legs in \`${block.name ?? 'pull'}\` is not given`, help: 'add `bridle` with the angle' }) : asGiven(bridleLegTension({ P: pull, θ: writtenValue(angle) }));
}

/** Several loads on one thing: from all against the greatest to all in one line, the most that any directions make of them. */
function sumOf(loads: readonly Value[], name: string): Value {
  if (loads.length === 1) return loads[0]!;
  const inputs = [];
  let high = 0;
  for (const [i, load] of loads.entries()) {
    if (isUnknown(load)) return load;
    high += load.amount.high;
    inputs.push({ symbol: `P_${i + 1}`, meaning: `one of the loads on \`${name}\``, given: load as Given });
  }
  // The rest can at most pull against one of them.
  const low = Math.max(0, ...inputs.map(({ given }) => given.amount.low - (high - given.amount.high)));
  return asGiven({ calculation: 'load-on-holder', means: `load on \`${name}\``, symbol: 'P', kind: 'load', amount: { low, high }, formula: `P = ${inputs.map((i) => i.symbol).join(' + ')} at most`, inputs, sources: [loadsAddUp], assumptions: [], notes: [] });
}

function standOff(line: AssessedPiece | undefined, run: Run | undefined, name: string, block: BoundBlock): Derived {
  const lengths = new Map<string, Value>();
  if (line !== undefined) lengths.set(line.name, line.length);
  for (const link of run === undefined ? [] : allLinks(run)) if (link.piece !== undefined) lengths.set(link.piece.name, link.piece.length);
  const [first, ...rest] = [...lengths.values()].map((v): Value => (isUnknown(v) ? v : { ...v, kind: 'distance' }));
  return first === undefined ? unknown({ key: `line of ${name}`, says: `which line \`${name}\` pulls with is not known`, help: 'add `carries` to the winch', place: block.namePlace }) : standOffFrom([first, ...rest]);
}

function energyIn(block: BoundBlock, tension: Value, lineOut: Value): Derived | undefined {
  const statement = statementOf(block, 'stretch');
  const stretch = statement === undefined ? undefined : quantityOf(statement.values, 'stretch');
  return stretch === undefined ? undefined : storedEnergy({ F: tension, x: asGiven(lineStretch({ ε: writtenValue(stretch, 'needed share'), L: lineOut })) });
}
