import { isBelow } from '../base/compare.ts';
import { armyEstimate, type ArmyEstimate } from '../mechanics/army-estimate.ts';
import { asGiven, isUnknown, unknown, type Cause, type Derived, type Known, type Unknown, type Value } from '../mechanics/derivation.ts';
import { leadLinePull } from '../mechanics/lead-line-pull.ts';
import { lineStretch } from '../mechanics/line-stretch.ts';
import { storedEnergy } from '../mechanics/stored-energy.ts';
import { tensionInPart } from '../mechanics/tension-in-part.ts';
import { tensionInUse } from '../mechanics/tension-in-use.ts';
import { nameOf, quantityOf, type BoundBlock, type Problem } from '../model/bound.ts';
import type { AssessedWinch } from './assess-winch.ts';
import type { AssessedChain } from './assess-chain.ts';
import type { AssessedPiece } from './assess-line.ts';
import type { Assessing } from './assessing.ts';
import { sources } from '../trade/sources.ts';
import { maybeFact, statementOf, writtenValue } from './facts.ts';
import { layOut } from './pull-layout.ts';
import { loadedBy, type Loaded } from './pull-loads.ts';
import { reachOf, type PullReach } from './pull-reach.ts';
import { resistanceOf, type PullResistance } from './pull-resistance.ts';
import type { PullRigging } from './pull-rigging.ts';
import { allLinks, type Run } from './pull-run.ts';
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
  const through = nameOf(block.header, 'chain');
  const chainFound = through === undefined ? undefined : assessing.reader.find(through.name, ['chain']);
  const chain = chainFound === undefined ? undefined : assessing.chain(chainFound.block);
  const resistance = resistanceOf(block, assessing);
  const { winch, winchCause, lineName, run, rigging, end, endPlace } = layOut(block, chain, assessing);
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
