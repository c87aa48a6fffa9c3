import { isBelow } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { armyEstimate, type ArmyEstimate } from '../mechanics/army-estimate.ts';
import { asGiven, isUnknown, unknown, type Cause, type Derived, type Known, type Unknown, type Value } from '../mechanics/derivation.ts';
import { leadLinePull } from '../mechanics/lead-line-pull.ts';
import { lineStretch } from '../mechanics/line-stretch.ts';
import { storedEnergy } from '../mechanics/stored-energy.ts';
import { tensionInPart } from '../mechanics/tension-in-part.ts';
import { tensionInUse } from '../mechanics/tension-in-use.ts';
import { nameOf, quantityOf, wordOf, type BoundBlock, type Problem } from '../model/bound.ts';
import { pointToName } from './assess-vehicle.ts';
import { carriedName, type AssessedWinch } from './assess-winch.ts';
import { winchAfter, type AssessedChain } from './assess-chain.ts';
import type { AssessedPiece } from './assess-line.ts';
import type { Assessing } from './assessing.ts';
import { sources } from '../trade/sources.ts';
import { maybeFact, missingFact, statementOf, writtenValue } from './facts.ts';
import { loadedBy, type Loaded } from './pull-loads.ts';
import { reachOf, type PullReach } from './pull-reach.ts';
import { resistanceOf, type PullResistance } from './pull-resistance.ts';
import { efficiencyOf, holderOf, holdersOf, riggingOf, vehicleOfAnchor, type Holder, type PullBlock, type PullRigging } from './pull-rigging.ts';
import { allLinks, runFromGear, runFromLine, type Run } from './pull-run.ts';
import { standOffOf } from './pull-stand-off.ts';

export type { Loaded, LoadedSort } from './pull-loads.ts';

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
  /** The same, from the lengths that are known: it is that or more. */
  readonly standOffAtLeast: Derived;
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
  const run = chain === undefined ? undefined : runFromLine(chain, lineName, fastenedOf(block, assessing));
  const resistance = resistanceOf(block, assessing);
  const endPlace = through?.place ?? statementOf(block, 'back-to')?.place ?? block.namePlace;
  const { end, ends, cause: endCause } = endOf(block, through, chain, run, lineName, assessing);
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
    ends,
    endPlace,
    endCause: endCause ?? closed,
  });
  const reach = reachOf(block, rigging, run, lineName ?? firstLineOf(run));
  const atWork = winch === undefined ? undefined : winch.at(reach.lineOut);
  const nothing = noLineLeft(winch, winchCause, reach, block);
  const available = nothing ?? asGiven(atWork!.pull);
  const needed = asGiven(leadLinePull({ R: resistance.atLeast, MA: rigging.advantage }));
  const tension = isUnknown(available) || isUnknown(needed) ? needed : asGiven(tensionInUse({ T_n: needed, F_n: available }));
  const tensions = rigging.parts.map((part, i) => (i === 0 ? tension : asGiven(tensionInPart({ s: part.share, T: tension }))));
  const line = winch?.piece;
  const off = standOffOf({ block, line, run, rigging, through, chain });
  return {
    kind: 'pull', block, name, winch, winchCause, chain, line, run, resistance, rigging, reach,
    layer: nothing ?? asGiven(atWork!.layer), available, needed, tension, tensions,
    loaded: loadedBy({ block, winch, line, run, rigging, tensions, tension, end, endPlace, loadVehicle: resistance.vehicleName }, assessing),
    army: isUnknown(available) ? available : armyEstimate(resistance.total, available),
    standOff: off.standOff, standOffAtLeast: off.atLeast,
    people: maybeFact(block, 'people'),
    energy: energyIn(block, tension, underTension(reach.lineOut, run, lineName)),
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
  return { winch: winchAfter(found.block, chain?.repair, assessing), cause: undefined };
}

interface LineEnd {
  readonly end: Holder | undefined;
  /** All that is written to hold it. */
  readonly ends: readonly Holder[];
  readonly cause: Cause | undefined;
}

const isHolder = (holder: Holder | undefined): holder is Holder => holder !== undefined;

function endOf(block: BoundBlock, through: { readonly name: string; readonly place: Place } | undefined, chain: AssessedChain | undefined, run: Run | undefined, line: string | undefined, assessing: Assessing): LineEnd {
  const nothing = (cause: Cause | undefined): LineEnd => ({ end: undefined, ends: [], cause });
  if (through !== undefined && chain === undefined) return nothing({ key: `name ${through.name}`, says: `\`${through.name}\` is not known`, help: 'declare it as a `chain`', place: through.place, reported: true });
  const odd = run === undefined ? undefined : allLinks(run).find((link) => link.sort === 'other' && isUnknown(link.workingLimit) && link.workingLimit.unknown.reported === true);
  if (odd !== undefined && isUnknown(odd.workingLimit)) return nothing(odd.workingLimit.unknown);
  if (chain !== undefined && [...chain.block.statements].some((s) => s.broken.has('route'))) return nothing({ key: `route of ${chain.name}`, says: `a route of \`${chain.name}\` cannot be read`, help: 'correct it', place: chain.block.namePlace, reported: true });
  const fromRun = holdersOf(run).filter(isHolder);
  const back = statementOf(block, 'back-to');
  const named = back === undefined ? undefined : nameOf(back.values, 'target');
  const written = named === undefined ? undefined : namedHolder(named, assessing);
  // A chain that does not begin with the line says less about its end than `back-to` does.
  const isOfLine = run?.links.some((link) => link.piece !== undefined && link.piece.name === line) === true;
  if (fromRun.length > 0) return { end: fromRun[0], ends: isOfLine && written?.end !== undefined ? [...fromRun, written.end] : fromRun, cause: undefined };
  if (block.brokenHeads.has('back-to') || (back !== undefined && back.broken.size > 0)) return nothing({ ...missingFact(block, 'back-to'), reported: true });
  return written === undefined ? nothing(undefined) : { ...written, ends: written.end === undefined ? [] : [written.end] };
}

/** An anchor or a vehicle by name alone: which of a vehicle's points is used is then not known. */
function namedHolder(named: { readonly name: string; readonly place: Place }, assessing: Assessing): { end: Holder | undefined; cause: Cause | undefined } {
  const found = assessing.reader.find(named.name, ['anchor', 'vehicle']);
  if (found === undefined) return { end: undefined, cause: { key: `name ${named.name}`, says: `\`${named.name}\` is not known`, help: 'declare it', place: named.place, reported: true } };
  const isVehicle = found.kind === 'vehicle';
  const point = isVehicle ? unknown({ key: `point at ${named.name} ${named.place.start}`, says: `which recovery point of \`${named.name}\` is used is not given`, help: `end a route of the chain at it, such as ${pointToName(named.name, found.block)}`, place: named.place }) : undefined;
  return { end: { name: named.name, called: named.name, sort: isVehicle ? 'vehicle' : 'anchor', place: named.place, block: found.block, vehicle: isVehicle ? named.name : vehicleOfAnchor(found.block), point }, cause: undefined };
}

/** The blocks on the way, and the gear that they are made fast to. */
function fastenedOf(block: BoundBlock, { reader }: Assessing): ReadonlySet<string> {
  const names = block.statements.flatMap(({ definition, values }) => {
    if (definition.head !== 'via') return [];
    const [own, on] = [nameOf(values, 'block'), nameOf(values, 'anchor')];
    return [own?.name, on === undefined || reader.find(on.name, ['anchor', 'vehicle']) !== undefined ? undefined : on.name];
  });
  return new Set(names.filter((name): name is string => name !== undefined));
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
  const written = on === undefined || direct === undefined ? undefined : namedHolder(on, assessing).end;
  const holder = holderOf(run) ?? written;
  const holders = [...holdersOf(run), written].filter(isHolder);
  return [{ statement, place: statement.place, name: named.name, block: found?.block, moves: word === 'travelling' ? 'load' : 'ground', efficiency: efficiencyOf(found?.block, named.name, named.place, assessing.practice), run, holder, holders }];
}

/** Where nobody says which line is on the drum, the first one of the run is no extension. */
const firstLineOf = (run: Run | undefined): string | undefined => run?.links[0]?.piece?.name;

/** The line that is out, and the lines behind it. */
function underTension(lineOut: Value, run: Run | undefined, own: string | undefined): Value {
  const behind = new Map(run === undefined ? [] : allLinks(run).flatMap(({ piece }) => (piece === undefined || piece.name === own ? [] : [[piece.name, piece.length] as const])));
  if (behind.size === 0 || isUnknown(lineOut)) return lineOut;
  let { low, high } = lineOut.amount;
  const inputs = [{ symbol: 'L_1', meaning: 'line out of the winch', given: lineOut }];
  for (const [name, length] of behind) {
    if (isUnknown(length)) return length;
    low += length.amount.low;
    high += length.amount.high;
    inputs.push({ symbol: `L_${inputs.length + 1}`, meaning: `length of \`${name}\``, given: length });
  }
  return asGiven({ calculation: 'line-under-tension', means: 'line under tension, with the lines behind it', symbol: 'L', kind: 'distance', amount: { low, high }, formula: `L = ${inputs.map((i) => i.symbol).join(' + ')}`, inputs, sources: [sources['lengths-add']], assumptions: [], notes: [] });
}

function energyIn(block: BoundBlock, tension: Value, length: Value): Derived | undefined {
  const statement = statementOf(block, 'stretch');
  const stretch = statement === undefined ? undefined : quantityOf(statement.values, 'stretch');
  return stretch === undefined ? undefined : storedEnergy({ F: tension, x: asGiven(lineStretch({ ε: writtenValue(stretch, 'needed share'), L: length })) });
}
