import type { Place } from '../base/span.ts';
import { isUnknown, unknown, type Cause, type Given } from '../mechanics/derivation.ts';
import { nameOf, quantityOf, wordOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { noValues } from '../model/values.ts';
import { angleNotWritten } from '../trade/gear-sources.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedChain } from './assess-chain.ts';
import { pointToName } from './assess-vehicle.ts';
import { carriedName, type AssessedWinch } from './assess-winch.ts';
import type { Assessing } from './assessing.ts';
import { missingFact, statementOf, writtenValue } from './facts.ts';
import { efficiencyOf, holderOf, holdersOf, riggingOf, vehicleOfAnchor, type Holder, type PullBlock, type PullRigging } from './pull-rigging.ts';
import { allLinks, runFromGear, runFromLine, type Run } from './pull-run.ts';
import { winchAfter } from './winch-after.ts';

/** As much of a chain as says where the line of a pull leads; it need not be known yet what loads it. */
export type LaidChain = Pick<AssessedChain, 'name' | 'block' | 'winch' | 'repair'> & { readonly routes: readonly Pick<AssessedChain['routes'][number], 'links'>[] };

/** Where the line of a pull leads, before anything is known of what loads it. */
export interface PullLayout {
  readonly winch: AssessedWinch | undefined;
  /** Why there is no winch to speak of. */
  readonly winchCause: Cause | undefined;
  readonly lineName: string | undefined;
  readonly run: Run | undefined;
  readonly rigging: PullRigging;
  readonly end: Holder | undefined;
  readonly endPlace: Place;
  /** Why nothing can be said about the end. */
  readonly endCause: Cause | undefined;
}

/** The line's way, from the winch to what holds its end. */
export function layOut(block: BoundBlock, chain: LaidChain | undefined, assessing: Assessing): PullLayout {
  const through = nameOf(block.header, 'chain');
  const { winch, cause: winchCause } = winchOf(block, chain, assessing);
  // A chain that hangs on another winch is said to; its line is no extension for that.
  const lineName = chain?.winch === undefined ? (winch === undefined ? undefined : carriedName(winch.block)) : carriedName(chain.winch.block);
  const run = chain === undefined ? undefined : runFromLine(chain, lineName, fastenedOf(block, assessing));
  const endPlace = through?.place ?? statementOf(block, 'back-to')?.place ?? block.namePlace;
  const { end, ends, cause } = endOf(block, through, chain, run, lineName, assessing);
  // A chain that closes on itself is said at the chain.
  const closed: Cause | undefined = run?.closedAt === undefined ? undefined : { key: `chain of ${block.name ?? 'pull'}`, says: 'its chain closes on itself', help: 'correct it', place: endPlace, reported: true };
  const endCause = cause ?? closed;
  const rigging = riggingOf({
    block,
    winch: winch?.name ?? 'winch',
    line: lineName ?? 'line',
    winchVehicle: winch === undefined ? undefined : nameOf(winch.block.header, 'vehicle')?.name,
    loadVehicle: nameOf(statementOf(block, 'load')?.values ?? noValues, 'vehicle')?.name,
    blocks: block.statements.flatMap((statement) => blockOf(statement, chain, assessing)),
    end,
    ends,
    endPlace,
    endCause,
  });
  return { winch, winchCause, lineName, run, rigging, end, endPlace, endCause };
}

const noAngle: Given = { amount: exactly(0), kind: 'angle', origin: { from: 'assumed', source: angleNotWritten, means: 'write the pull with its `via` and the angle there' } };

/** The least angle at a block that the pulls through a chain give, in words or by their places; none where one of them gives it for a block in neither way. */
export function angleOfPulls(pulls: readonly BoundBlock[], chain: LaidChain, assessing: Assessing): Given {
  let least: Given | undefined;
  for (const pull of pulls) {
    if (pull.brokenHeads.has('via') || pull.statements.some((s) => s.definition.head === 'via' && s.broken.size > 0)) return noAngle;
    const vias = pull.statements.filter((s) => s.definition.head === 'via');
    const places = vias.length === 0 ? undefined : pull.statements.find((s) => s.definition.head === 'stands');
    const planned = places === undefined ? undefined : plannedAngles(pull, chain, assessing);
    if (places !== undefined && planned === undefined) return noAngle;
    for (const via of vias) {
      const written = quantityOf(via.values, 'angle');
      const byPlaces = planned?.get(via);
      // Places that do not say it all may still say something else than the angle.
      if (places === undefined ? written === undefined : byPlaces === undefined) return noAngle;
      const angles: Given[] = written === undefined ? [] : [writtenValue(written)];
      if (byPlaces !== undefined) angles.push({ amount: exactly(byPlaces), kind: 'angle', origin: { from: 'written', place: places!.place } });
      for (const angle of angles) if (least === undefined || angle.amount.low < least.amount.low) least = angle;
    }
  }
  return least ?? noAngle;
}

/** The angles at the blocks of a pull by its places; undefined where its line cannot be followed, or a place cannot be read. */
function plannedAngles(pull: BoundBlock, chain: LaidChain, assessing: Assessing): ReadonlyMap<BoundStatement, number | undefined> | undefined {
  if (pull.brokenHeads.has('stands') || pull.statements.some((s) => s.definition.head === 'stands' && s.broken.size > 0)) return undefined;
  const { rigging, endCause } = layOut(pull, chain, assessing);
  return endCause === undefined && rigging.problems.length === 0 ? new Map(rigging.blocks.map(({ statement }, i) => [statement, rigging.plannedAngles[i]])) : undefined;
}
function winchOf(block: BoundBlock, chain: LaidChain | undefined, assessing: Assessing): { winch: AssessedWinch | undefined; cause: Cause | undefined } {
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

function endOf(block: BoundBlock, through: { readonly name: string; readonly place: Place } | undefined, chain: LaidChain | undefined, run: Run | undefined, line: string | undefined, assessing: Assessing): LineEnd {
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

function blockOf(statement: BoundBlock['statements'][number], chain: LaidChain | undefined, assessing: Assessing): Omit<PullBlock, 'angle' | 'doubles'>[] {
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

