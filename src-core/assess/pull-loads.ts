import type { Place } from '../base/span.ts';
import { blockLoadWithFriction } from '../mechanics/block-load-with-friction.ts';
import { bridleLegTension } from '../mechanics/bridle-leg-tension.ts';
import { asGiven, isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { nameOf, quantityOf, type BoundBlock } from '../model/bound.ts';
import { forkShare, loadsAddUp } from '../trade/plan-sources.ts';
import { sources } from '../trade/sources.ts';
import type { Amount } from '../units/amount.ts';
import { damageOf } from './assess-gear.ts';
import type { AssessedAnchor } from './assess-anchor.ts';
import { doubtOf, type AssessedLink } from './assess-chain.ts';
import type { AssessedPiece } from './assess-line.ts';
import { pointToName, type AssessedVehicle } from './assess-vehicle.ts';
import type { AssessedWinch } from './assess-winch.ts';
import type { Assessing } from './assessing.ts';
import { missingFact, statementOf, writtenValue } from './facts.ts';
import { holderOf, holdersOf, type Holder, type PullBlock, type PullRigging } from './pull-rigging.ts';
import { allLinks, bridledRun, meetsAt, type Run } from './pull-run.ts';
import { unevenLeg, whyUneven } from './uneven-bridle.ts';
import { limitOverBlocks } from './wire-over-sheave.ts';
import { holdOfVehicle, softGround } from './vehicle-hold.ts';

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
  /** Why it may hold less, or be loaded more, than the figures say: what is within its limit is then not judged. */
  readonly doubt: Cause | undefined;
  readonly link: AssessedLink | undefined;
  readonly anchor: AssessedAnchor | undefined;
  readonly vehicle: AssessedVehicle | undefined;
}

export interface LoadingInput {
  readonly block: BoundBlock;
  readonly winch: AssessedWinch | undefined;
  readonly line: AssessedPiece | undefined;
  readonly run: Run | undefined;
  readonly rigging: PullRigging;
  readonly tensions: readonly Value[];
  readonly tension: Value;
  readonly end: Holder | undefined;
  readonly endPlace: Place;
  /** The vehicle that is pulled, by name. */
  readonly loadVehicle: string | undefined;
}

/** One of the loads on a thing; with the node of the plan that it comes from, where there is a plan. */
interface OneLoad {
  readonly load: Value;
  readonly node: string | undefined;
}

/** Whatever stands: all that pulls on it together, and the names under which it is judged. */
interface Ground {
  readonly loads: OneLoad[];
  readonly judgedAs: Map<string, (load: Value) => Loaded>;
  doubt: Cause | undefined;
}

/** Links at which legs of one fork meet again, and what pulls there. */
interface Meeting {
  readonly at: ReadonlySet<string>;
  readonly load: Value;
}

const nothingOf = { own: undefined, limitSays: undefined, breaking: undefined, doubt: undefined, link: undefined, anchor: undefined, vehicle: undefined };

/** Everything the pull loads: line, gear, blocks, points, anchors, in the order from the winch. */
export function loadedBy(input: LoadingInput, assessing: Assessing): Loaded[] {
  return new Loading(input, assessing).all();
}

class Loading {
  readonly #input: LoadingInput;
  readonly #assessing: Assessing;
  readonly #found: Loaded[] = [];
  readonly #points = new Map<string, { loads: OneLoad[]; doubt: Cause | undefined }>();
  readonly #grounds = new Map<string, Ground>();
  /** Points and what stands, in the order in which the line comes to them. */
  readonly #held: (() => Loaded[])[] = [];

  constructor(input: LoadingInput, assessing: Assessing) {
    this.#input = input;
    this.#assessing = assessing;
  }

  all(): Loaded[] {
    const { rigging, run, tensions, tension, line, end, endPlace } = this.#input;
    const last = { load: tensions.at(-1) ?? tension, node: end?.name };
    if (line !== undefined && (run === undefined || !allLinks(run).some((l) => l.piece?.name === line.name))) {
      this.#found.push({ ...nothingOf, sort: 'line', name: line.name, place: endPlace, own: line.named, load: tension, limit: limitOverBlocks(limitOfLine(line, this.#assessing), line, rigging.blocks), limitSays: 'line factor', breaking: limitOverBlocks(line.hanging.strength, line, rigging.blocks), doubt: doubtOf(line) });
    }
    if (run !== undefined) this.#run(run, last, endPlace, { isEnd: true, end });
    else this.#hold(end, endPlace, last, true);
    rigging.blocks.forEach((b, i) => this.#block(b, tensions[i]!));
    this.#winch();
    return [...this.#found, ...this.#held.flatMap((held) => held())];
  }

  #link(of: AssessedLink, load: Value, place: Place, doubt: Cause | undefined): void {
    this.#found.push({ ...nothingOf, sort: of.sort === 'line' ? 'line' : 'link', name: of.name, place, own: of.place, load, limit: this.#overBlocks(of.workingLimit, of), limitSays: of.limitSays, breaking: of.breaking === undefined ? undefined : this.#overBlocks(of.breaking, of), doubt: of.doubt ?? doubt, link: of });
  }

  /** The line that the winch hauls runs over the blocks; extensions behind it do not. */
  #overBlocks(limit: Value, { piece }: AssessedLink): Value {
    return piece === undefined || piece.name !== this.#input.line?.name ? limit : limitOverBlocks(limit, piece, this.#input.rigging.blocks);
  }

  /**
   * A run down to what holds it, through every fork.
   * Legs that all end at one thing pull on it together with what comes to the fork, whatever the angle between them.
   */
  #run(run: Run, one: OneLoad, place: Place, how: { readonly isEnd?: boolean; readonly end?: Holder | undefined; readonly doubt?: Cause | undefined; readonly counted?: boolean; readonly meeting?: Meeting | undefined }): void {
    const { block, line, tension } = this.#input;
    let here = one;
    for (const link of run.links) {
      // Where another leg comes in, both pull together from there on.
      if (how.meeting?.at.has(link.name) === true) here = { load: how.meeting.load, node: undefined };
      this.#link(link, how.isEnd === true && link.piece !== undefined && link.piece.name === line?.name ? tension : here.load, place, how.doubt);
    }
    if (run.legs.length === 0) return this.#hold(how.end ?? holderOf(run), place, here, how.counted !== true, how.doubt);
    const met = run.legs.flatMap((leg) => meetsAt(leg, run) ?? []);
    const ends = run.legs.flatMap((leg) => (meetsAt(leg, run) === undefined ? holdersOf(leg) : []));
    const together = how.counted !== true && ends.length > 0 && ends.every((end) => end !== undefined && this.#groundName(end) === this.#groundName(ends[0]!));
    if (together) this.#ground(ends[0]!, place, here, how.doubt);
    const isSpokenOf = this.#isBridled(run);
    const load = isSpokenOf ? legTension(block, run, here.load, this.#input.rigging) : legOfFork(run, here.load);
    const meeting: Meeting | undefined = met.length === 0 ? how.meeting : { at: new Set(met.map((link) => link.name)), load: here.load };
    const doubt = how.doubt ?? (isSpokenOf ? undefined : forkDoubt(run, block));
    for (const leg of run.legs) this.#run(leg, { load, node: undefined }, place, { doubt, counted: together || how.counted === true, meeting });
  }

  /** Whether the pull's `bridle` speaks of the legs of a run; those of a block may each have all while it is not written. */
  #isBridled(run: Run): boolean {
    const { run: end, rigging, block } = this.#input;
    return bridledRun(end, rigging.blocks) === run && (run === end || statementOf(block, 'bridle') !== undefined || block.brokenHeads.has('bridle'));
  }

  #block(b: PullBlock, before: Value): void {
    const { rigging, tension } = this.#input;
    const load = loadOnBlock(b, rigging, before, tension);
    const gear = b.block === undefined ? undefined : this.#assessing.gear(b.block);
    const missing = unknown({ key: `name ${b.name}`, says: `\`${b.name}\` is not known`, help: 'declare it as a `block`', place: b.place, reported: true });
    this.#found.push({ ...nothingOf, sort: 'block', name: b.name, place: b.place, own: b.block?.namePlace, load, limit: gear?.workingLimit ?? missing, limitSays: gear === undefined || gear.limitFrom === 'written' ? undefined : gear.limitFrom, breaking: gear?.breakingStrength, doubt: gear === undefined ? undefined : damageOf(gear) });
    const one = { load, node: b.name };
    if (b.run !== undefined) this.#run(b.run, one, b.place, { end: b.holder });
    else this.#hold(b.holder, b.place, one, true);
    if (b.holder !== undefined || rigging.problems.length > 0 || (b.run !== undefined && holdersOf(b.run).some((h) => h !== undefined))) return;
    this.#found.push({ ...nothingOf, sort: b.moves === 'ground' ? 'anchor' : 'point', name: `what holds ${b.name}`, place: b.place, load, limit: unknown({ key: `holder of ${b.name} at ${b.place.start}`, says: `what holds \`${b.name}\` is not given`, help: 'write `on` and the anchor, or a route of the chain that begins with the block', place: b.place }) });
  }

  /** A winch that stands pulls on what it stands on: its own vehicle is an anchor. */
  #winch(): void {
    const { winch, rigging, tension, block, endPlace } = this.#input;
    if (winch === undefined || rigging.winchMoves || rigging.problems.length > 0) return;
    const named = nameOf(winch.block.header, 'vehicle');
    const place = nameOf(block.header, 'winch')?.place ?? endPlace;
    const found = named === undefined ? undefined : this.#assessing.reader.find(named.name, ['vehicle']);
    if (found !== undefined) return this.#vehicle(this.#assessing.vehicle(found.block), { load: tension, node: winch.name }, place, found.place, undefined);
    const cause: Cause = named === undefined
      ? { key: `holder of winch ${winch.name}`, says: `what holds \`${winch.name}\` is not given`, help: `write \`on\` and its vehicle behind \`${winch.name}\``, place: winch.block.namePlace }
      : { key: `name ${named.name}`, says: `\`${named.name}\` is not known`, help: 'declare it as a `vehicle` with its mass', place: named.place, reported: true };
    this.#found.push({ ...nothingOf, sort: 'anchor', name: `what holds ${winch.name}`, place, load: tension, limit: unknown(cause) });
  }

  /** A load on a holder: on its recovery point, and on what stands there unless that is `counted` already. */
  #hold(written: Holder | undefined, place: Place, one: OneLoad, onGround: boolean, doubt?: Cause): void {
    if (written === undefined) return;
    const holder = this.#asItMoves(written);
    if (holder.point !== undefined) {
      const known = this.#points.get(holder.called);
      if (known !== undefined) {
        known.loads.push(one);
        known.doubt ??= doubt;
      } else {
        const at = { loads: [one], doubt };
        this.#points.set(holder.called, at);
        const block = this.#assessing.reader.find(holder.vehicle ?? '', ['vehicle'])?.block;
        const vehicle = block === undefined ? undefined : this.#assessing.vehicle(block);
        this.#held.push(() => [{ ...nothingOf, sort: 'point', name: holder.called, place, own: holder.place, load: this.#sum(at.loads, holder.called), limit: holder.point!, doubt: at.doubt, vehicle }]);
      }
    } else if (holder.vehicle !== undefined) this.#pointOfAnchor(holder, holder.vehicle, place, one.load);
    if (onGround) this.#ground(holder, place, one, doubt);
  }

  /** A vehicle that the file calls an anchor is held by one of its points, too. */
  #pointOfAnchor({ name, place: own }: Holder, vehicle: string, place: Place, load: Value): void {
    const limit = unknown({ key: `point of ${vehicle} as anchor`, says: `which recovery point of \`${vehicle}\` is used is not given`, help: `write it behind the anchor where a route ends at it: ${pointToName(name, this.#assessing.reader.find(vehicle, ['vehicle'])?.block)}`, place: own });
    this.#found.push({ ...nothingOf, sort: 'point', name: `point of ${vehicle}`, place, own, load, limit });
  }

  #ground(holder: Holder, place: Place, one: OneLoad, doubt: Cause | undefined): void {
    // A vehicle that moves with the load holds nothing.
    if (this.#moves(holder)) return;
    if (holder.sort === 'vehicle') {
      // One that stands is an anchor, braked.
      if (holder.block === undefined) return;
      return this.#vehicle(this.#assessing.vehicle(holder.block), one, place, holder.place, doubt);
    }
    const anchor = holder.block === undefined ? undefined : this.#assessing.anchor(holder.block);
    const unnamed = anchor?.form === 'vehicle' && holder.vehicle === undefined ? whichVehicle(anchor) : undefined;
    const limit = (anchor?.holdingFrom === 'vehicle' && anchor.vehicle !== undefined ? holdOfVehicle(anchor.vehicle, this.#input.block) : anchor?.holding) ?? unknown({ key: `name ${holder.name}`, says: `\`${holder.name}\` is not known`, help: 'declare it', place: holder.place, reported: true });
    this.#stand(this.#groundName(holder), holder.name, one, doubt ?? unnamed ?? (anchor?.holdingFrom === 'vehicle' && anchor.vehicle !== undefined ? softGround(this.#input.block, anchor.vehicle.name) : undefined), (load) => ({ ...nothingOf, sort: 'anchor', name: holder.name, place, own: holder.place, load, limit, limitSays: anchor === undefined || anchor.holdingFrom === 'written' ? undefined : anchor.holdingFrom, anchor, vehicle: anchor?.vehicle }));
  }

  #vehicle(vehicle: AssessedVehicle, one: OneLoad, place: Place, own: Place, doubt: Cause | undefined): void {
    this.#stand(`vehicle ${vehicle.name}`, vehicle.name, one, doubt ?? softGround(this.#input.block, vehicle.name), (load) => ({ ...nothingOf, sort: 'anchor', name: vehicle.name, place, own, load, limit: holdOfVehicle(vehicle, this.#input.block), limitSays: 'braked vehicle', vehicle }));
  }

  /** One vehicle is one anchor, whichever of its points, its winch or an `anchor` block it is pulled by. */
  #stand(key: string, name: string, one: OneLoad, doubt: Cause | undefined, judged: (load: Value) => Loaded): void {
    let ground = this.#grounds.get(key);
    if (ground === undefined) {
      const made: Ground = { loads: [], judgedAs: new Map(), doubt: undefined };
      this.#grounds.set(key, (ground = made));
      this.#held.push(() => [...made.judgedAs].map(([called, as]) => ({ ...as(this.#sum(made.loads, called)), doubt: made.doubt })));
    }
    ground.loads.push(one);
    ground.doubt ??= doubt;
    if (!ground.judgedAs.has(name)) ground.judgedAs.set(name, judged);
  }

  #groundName(holder: Holder): string {
    if (holder.sort === 'vehicle') return `vehicle ${holder.name}`;
    const vehicle = holder.block === undefined ? undefined : this.#assessing.anchor(holder.block).vehicle;
    return vehicle === undefined ? `anchor ${holder.name}` : `vehicle ${vehicle.name}`;
  }

  /** An anchor that moves is a vehicle like any other: the line is fast to a point of it, and which one nobody wrote. */
  #asItMoves(holder: Holder): Holder {
    const { vehicle: name } = holder;
    if (holder.sort === 'vehicle' || name === undefined || !this.#moves(holder)) return holder;
    const point = holder.point ?? unknown({ key: `point of ${holder.name}`, says: `which recovery point of \`${name}\` is used is not given`, help: `end the route at it, such as ${pointToName(name, this.#assessing.reader.find(name, ['vehicle'])?.block)}`, place: holder.place });
    return { ...holder, sort: 'vehicle', name, block: this.#assessing.reader.find(name, ['vehicle'])?.block, point };
  }

  #moves({ vehicle }: Holder): boolean {
    const { winch, rigging, loadVehicle } = this.#input;
    if (vehicle === undefined) return false;
    return vehicle === loadVehicle || (rigging.winchMoves && winch !== undefined && vehicle === nameOf(winch.block.header, 'vehicle')?.name);
  }

  /** Several loads on one thing: by their directions where the plan gives all of them, else as bad as any directions make it. */
  #sum(loads: readonly OneLoad[], name: string): Value {
    if (loads.length === 1) return loads[0]!.load;
    const { rigging, tension } = this.#input;
    const inputs = [];
    for (const [i, { load }] of loads.entries()) {
      if (isUnknown(load)) return load;
      inputs.push({ symbol: `P_${i + 1}`, meaning: `one of the loads on \`${name}\``, given: load as Given });
    }
    const base = { means: `load on \`${name}\``, symbol: 'P', kind: 'load' as const, inputs, notes: [] };
    const ways = loads.flatMap(({ node }) => rigging.plan?.nodes.find((n) => n.name === node) ?? []);
    if (ways.length === loads.length && ways.every((n) => n.x_N !== undefined && n.y_N !== undefined) && !isUnknown(tension)) {
      const sum = hypotenuse(total(ways.map((n) => n.x_N!)), total(ways.map((n) => n.y_N!)));
      return asGiven({ ...base, calculation: 'load-on-holder-in-plan', amount: { low: sum.low * tension.amount.low, high: sum.high * tension.amount.high }, formula: `P = ${inputs.map((i) => i.symbol).join(' + ')}, by their directions in plan`, sources: [sources.statics], assumptions: ['places as written'] });
    }
    const high = inputs.reduce((sum, { given }) => sum + given.amount.high, 0);
    // The rest can at most pull against one of them.
    const low = Math.max(0, ...inputs.map(({ given }) => given.amount.low - (high - given.amount.high)));
    return asGiven({ ...base, calculation: 'load-on-holder', amount: { low, high }, formula: `P = ${inputs.map((i) => i.symbol).join(' + ')} at most`, sources: [loadsAddUp], assumptions: [] });
  }
}

const total = (amounts: readonly Amount[]): Amount => amounts.reduce((sum, a) => ({ low: sum.low + a.low, high: sum.high + a.high }));

/** Size of a force whose two parts are each known between two ends. */
function hypotenuse(x: Amount, y: Amount): Amount {
  const least = (a: Amount): number => (a.low <= 0 && 0 <= a.high ? 0 : Math.min(Math.abs(a.low), Math.abs(a.high)));
  const most = (a: Amount): number => Math.max(Math.abs(a.low), Math.abs(a.high));
  return { low: Math.hypot(least(x), least(y)), high: Math.hypot(most(x), most(y)) };
}

/** A vehicle that nobody named may be the one that is pulled, whatever it was proved to hold. */
const whichVehicle = ({ name, block }: AssessedAnchor): Cause => ({ ...missingFact(block, 'vehicle'), says: `which vehicle stands as \`${name}\` is not given`, help: 'add `vehicle`, so that it can be told from the one that is pulled' });

/** Working limit of a piece that no link of a chain speaks of. */
function limitOfLine(line: AssessedPiece, assessing: Assessing): Value {
  const byFactor = asGiven(workingLimitFromBreaking({ MBL: line.hanging.strength, f: assessing.practice.value('line-factor') }));
  const { working } = line.line;
  if (working === undefined || isUnknown(byFactor)) return byFactor;
  return isUnknown(working) || working.amount.low < byFactor.amount.low ? working : byFactor;
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

function legTension(block: BoundBlock, run: Run, pull: Value, rigging: PullRigging): Value {
  const statement = statementOf(block, 'bridle');
  const angle = statement === undefined ? undefined : quantityOf(statement.values, 'bridle');
  const cause = missingFact(block, 'bridle');
  if (run.legs.length !== 2) return unknown({ key: `legs of ${block.name ?? 'pull'}`, says: `a bridle of ${run.legs.length} legs is not settled by statics: the stiffest leg takes most`, help: 'use two legs', place: block.namePlace });
  if (angle === undefined) return unknown(cause.reported === true ? cause : { ...cause, says: `the angle between the legs in \`${block.name ?? 'pull'}\` is not given`, help: 'add `bridle` with the angle' });
  const θ = writtenValue(angle);
  const even = asGiven(bridleLegTension({ P: pull, θ }));
  const why = whyUneven(run, block, rigging);
  return why === undefined || isUnknown(even) || isUnknown(pull) ? even : unevenLeg(pull, θ, even, why);
}

/** A leg behind a fork that the pull's `bridle` does not speak of: it may carry nothing, or all that comes to the fork. */
function legOfFork(run: Run, load: Value): Value {
  if (isUnknown(load)) return load;
  return asGiven({ calculation: 'leg-of-fork', means: `load on each leg behind \`${forkOf(run)}\``, symbol: 'T', kind: 'tension', amount: { low: 0, high: load.amount.high }, formula: 'T = 0 to P', inputs: [{ symbol: 'P', meaning: 'load that comes to the fork', given: load }], sources: [forkShare], assumptions: [], notes: [] });
}

const forkOf = (run: Run): string => run.links.at(-1)?.name ?? 'the fork';

/** Wide legs carry more than what comes to them, so that within all of it is not yet within the limit. */
const forkDoubt = (run: Run, block: BoundBlock): Cause => ({
  key: `fork at ${forkOf(run)} in ${block.name ?? 'pull'}`,
  says: `how the legs behind \`${forkOf(run)}\` share their load in \`${block.name ?? 'pull'}\` is not known`,
  help: run.legs.some((leg) => leg.legs.length > 0) ? 'let each leg of the bridle end at an anchor without forking again' : 'add `bridle` with the angle between the legs, where they are the only ones of the pull; else let each leg end at an anchor',
  place: run.links.at(-1)?.place ?? block.namePlace,
});
