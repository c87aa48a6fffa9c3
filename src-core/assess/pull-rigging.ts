import type { Place } from '../base/span.ts';
import { asGiven, isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { solveRigging, type RiggingAnswer } from '../mechanics/rigging.ts';
import type { PlanPosition, Rigging, RiggingNode, RiggingProblem } from '../mechanics/rigging-plan.ts';
import { sheaveEfficiency } from '../mechanics/sheave-efficiency.ts';
import { nameOf, quantityOf, wordOf, type BoundBlock, type BoundStatement, type Problem } from '../model/bound.ts';
import { doubledAngle, partsAtAngle, turnedAngle } from '../trade/plan-sources.ts';
import { sources } from '../trade/sources.ts';
import { between, exactly, type Amount } from '../units/amount.ts';
import { maybeFact, statementOf, writtenValue } from './facts.ts';
import type { Practice } from './practice.ts';
import { bridgedBy } from './pull-reach.ts';
import { isWeightAlone } from './pull-resistance.ts';
import { linkName, type Run } from './pull-run.ts';

/** What holds the line's end, a block or a leg of a bridle. */
export interface Holder {
  readonly name: string;
  /** Its name; of a vehicle with the recovery point. */
  readonly called: string;
  readonly sort: 'anchor' | 'vehicle';
  readonly place: Place;
  readonly block: BoundBlock | undefined;
  /** The vehicle that it is, or that stands as this anchor. */
  readonly vehicle: string | undefined;
  /** Working limit of the recovery point that is used; undefined where none is meant or written. */
  readonly point: Value | undefined;
}

export interface PullBlock {
  readonly statement: BoundStatement;
  readonly place: Place;
  readonly name: string;
  /** The block as it is declared; undefined when it is not. */
  readonly block: BoundBlock | undefined;
  readonly moves: 'ground' | 'load';
  readonly efficiency: Value;
  readonly angle: Value;
  /** The line doubles back here, so that both its parts pull on the load. */
  readonly doubles: boolean;
  readonly run: Run | undefined;
  readonly holder: Holder | undefined;
  /** All that is written to hold it: where its route and the legs of that end, and what the pull names behind `on`. */
  readonly holders: readonly Holder[];
}

export interface PullPart {
  readonly from: string;
  readonly to: string;
  /** Share of the tension at the winch that is in this part. */
  readonly share: Value;
  /** It runs between what stands and what moves. */
  readonly crosses: boolean;
  /** Length by the plan, when both ends have a place in it. */
  readonly planned_m: number | undefined;
}

export interface RiggingInput {
  readonly block: BoundBlock;
  readonly winch: string;
  readonly line: string;
  readonly winchVehicle: string | undefined;
  readonly loadVehicle: string | undefined;
  readonly blocks: readonly Omit<PullBlock, 'angle' | 'doubles'>[];
  readonly end: Holder | undefined;
  /** All that is written to hold the line's end: the legs of a bridle each. */
  readonly ends: readonly Holder[];
  readonly endPlace: Place;
  /** Why nothing can be said about the end: a problem stands elsewhere already. */
  readonly endCause: Cause | undefined;
}

export interface PullRigging {
  readonly winchMoves: boolean;
  readonly endMoves: boolean;
  readonly blocks: readonly PullBlock[];
  readonly parts: readonly PullPart[];
  /** Angle between the two parts at each block, by the places of what stands about it (rad). */
  readonly plannedAngles: readonly (number | undefined)[];
  /** Which way the two parts together pull at each block, by the same places. */
  readonly plannedPulls: readonly (PlanPosition | undefined)[];
  readonly advantage: Value;
  /** Angle between the first part of the line and the way the load goes, where the winch is on the load and both places are known (rad). */
  readonly plannedLead: number | undefined;
  /** Where the line comes from to what holds its end: the last block, else the winch. Undefined where no place is given. */
  readonly comesFrom: PlanPosition | undefined;
  /** In plan: loads by node for one newton at the winch. */
  readonly plan: RiggingAnswer | undefined;
  readonly problems: readonly Problem[];
}

const degree = Math.PI / 180;
const assumedAngle = (doubles: boolean): Given => ({
  amount: between(0, (doubles ? 30 : 180) * degree),
  kind: 'angle',
  origin: { from: 'assumed', source: doubles ? doubledAngle : turnedAngle, means: 'write `angle` behind the block to replace it' },
});

/** Share of the tension that a block passes: written, else by its bearing, else anything between the best and the worst. */
export function efficiencyOf(block: BoundBlock | undefined, name: string, place: Place, practice: Practice): Value {
  if (block === undefined) return unknown({ key: `name ${name}`, says: `\`${name}\` is not known`, help: 'declare it as a `block`', place, reported: true });
  const written = maybeFact(block, 'efficiency');
  if (written !== undefined) return written;
  const bearing = statementOf(block, 'bearing');
  const word = bearing === undefined ? undefined : wordOf(bearing.values, 'bearing');
  const losses = (word === 'plain' || word === 'roller' ? [word] : word === undefined ? ['plain', 'roller'] : []).map((w) => practice.value('sheave-loss', w));
  if (losses.some((loss) => !isUnknown(loss) && loss.origin.from === 'written')) return sharePassed(losses as Given[], name);
  const value = sheaveEfficiency(word);
  return isUnknown(value) ? unknown({ ...value.unknown, key: `friction of ${name}`, says: `what is lost over \`${name}\` is not given`, help: 'add `efficiency` to it, measured', place: bearing?.place ?? block.namePlace }) : value;
}

/** What a loss that the shop wrote leaves; a bearing that is not told may be either of the two. */
function sharePassed(losses: readonly Given[], name: string): Value {
  const amount = between(1 - Math.max(...losses.map((l) => l.amount.high)), 1 - Math.min(...losses.map((l) => l.amount.low)));
  const inputs = losses.map((given, i) => ({ symbol: losses.length === 1 ? 'l' : `l_${i + 1}`, meaning: 'share of the pull lost at a sheave', given }));
  return asGiven({ calculation: 'share-past-sheave', means: `share of the tension that passes \`${name}\``, symbol: 'e', kind: 'share', amount, formula: losses.length === 1 ? 'e = 1 − l' : 'e = 1 − l_1 to 1 − l_2', inputs, sources: [sources.statics], assumptions: [], notes: [] });
}

/** Whether a holder moves with the load: a vehicle does under any name that the file has for it. */
const moves = ({ vehicle }: Holder, input: RiggingInput, winchMoves: boolean): boolean => vehicle !== undefined && (vehicle === input.loadVehicle || (winchMoves && vehicle === input.winchVehicle));

export function riggingOf(input: RiggingInput): PullRigging {
  const travelling = input.blocks.some((b) => b.moves === 'load');
  const endIsLoad = input.end !== undefined ? input.end.vehicle !== undefined && input.end.vehicle === input.loadVehicle && input.loadVehicle !== input.winchVehicle : input.loadVehicle === undefined;
  const winchMoves = input.winchVehicle !== undefined && input.loadVehicle !== undefined ? input.winchVehicle === input.loadVehicle : !travelling && !endIsLoad;
  const endMoves = input.end === undefined ? endIsLoad : moves(input.end, input, winchMoves);
  const sides: ('ground' | 'load')[] = [winchMoves ? 'load' : 'ground', ...input.blocks.map((b) => b.moves), endMoves ? 'load' : 'ground'];
  const blocks = input.blocks.map((b, i): PullBlock => {
    const [before, after] = [sides[i]!, sides[i + 2]!];
    const doubles = before !== b.moves && after !== b.moves;
    const angle = quantityOf(b.statement.values, 'angle');
    return { ...b, doubles, angle: angle === undefined ? assumedAngle(doubles) : writtenValue(angle) };
  });
  const names = [input.winch, ...blocks.map((b) => b.name), input.end?.name ?? 'load'];
  const positions = placesOf(input, blocks, winchMoves, endMoves);
  const problems = problemsBefore(input, blocks, winchMoves, endMoves);
  const solved = input.endCause === undefined && problems.length === 0 ? solveRigging(riggingFor(names, sides, blocks, positions, input.line), { linePull_N: exactly(1) }) : undefined;
  const raised = solved !== undefined && 'problems' in solved ? solved.problems : [];
  for (const found of raised) {
    // A block met twice in a row also looks like a rope that comes back: it is said once.
    if (found.problem === 'closed-chain' && raised.some((other) => other.problem === 'block-used-twice')) continue;
    const problem = problemOf(found, input, blocks);
    if (!problems.some((p) => p.code === problem.code && p.place.start === problem.place.start)) problems.push(problem);
  }
  const answer = solved !== undefined && 'answer' in solved ? solved.answer : undefined;
  const parts = names.slice(1).map((to, i): PullPart => {
    const [a, b] = [positions?.[i], positions?.[i + 1]];
    return { from: names[i]!, to, share: shareAt(blocks.slice(0, i)), crosses: sides[i] !== sides[i + 1], planned_m: a === undefined || b === undefined ? undefined : distance(a, b) };
  });
  const broken = problems.length > 0 ? unknown({ key: `rigging of ${input.block.name ?? 'pull'}`, says: 'this rigging cannot pull', help: 'correct it', place: problems[0]!.place, reported: true }) : undefined;
  const advantage = input.endCause !== undefined ? unknown(input.endCause) : (broken ?? advantageOf(blocks, parts, answer));
  const plannedAngles = blocks.map((_, i) => angleAt(positions?.[i + 1], positions?.[i], positions?.[i + 2]));
  const plannedPulls = blocks.map((_, i) => pullAt(positions?.[i + 1], positions?.[i], positions?.[i + 2]));
  return { winchMoves, endMoves, blocks, parts, plannedAngles, plannedPulls, plannedLead: winchMoves ? leadAt(positions?.[0], positions?.[1]) : undefined, comesFrom: positions?.at(-2), advantage, plan: answer?.inPlan === true ? answer : undefined, problems };
}

/** Angle under which two places are seen from a third. */
function angleAt(here: PlanPosition | undefined, one: PlanPosition | undefined, other: PlanPosition | undefined): number | undefined {
  if (here === undefined || one === undefined || other === undefined) return undefined;
  const [a, b] = [one, other].map((p) => ({ x: p.x_m - here.x_m, y: p.y_m - here.y_m })) as [{ x: number; y: number }, { x: number; y: number }];
  const lengths = Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y);
  return lengths > 0 ? Math.acos(Math.max(-1, Math.min(1, (a.x * b.x + a.y * b.y) / lengths))) : undefined;
}

/** Sum of two pulls of one from a place towards two others. */
function pullAt(here: PlanPosition | undefined, ...others: readonly (PlanPosition | undefined)[]): PlanPosition | undefined {
  const sum = { x_m: 0, y_m: 0 };
  for (const other of others) {
    if (here === undefined || other === undefined) return undefined;
    const [x, y] = [other.x_m - here.x_m, other.y_m - here.y_m];
    const length = Math.hypot(x, y);
    if (length === 0) return undefined;
    sum.x_m += x / length;
    sum.y_m += y / length;
  }
  return sum;
}

/** Angle to the way the load goes, or to the way back: a drum is square to both. */
const leadAt = (from: PlanPosition | undefined, to: PlanPosition | undefined): number | undefined =>
  from === undefined || to === undefined || (from.x_m === to.x_m && from.y_m === to.y_m) ? undefined : Math.atan2(Math.abs(to.y_m - from.y_m), Math.abs(to.x_m - from.x_m));

function riggingFor(names: readonly string[], sides: readonly ('ground' | 'load')[], blocks: readonly PullBlock[], positions: readonly (PlanPosition | undefined)[] | undefined, line: string): Rigging {
  const nodes = new Map<string, RiggingNode>();
  names.forEach((name, i) => {
    const block = blocks[i - 1];
    const efficiency = block === undefined || i === names.length - 1 ? undefined : isUnknown(block.efficiency) ? exactly(1) : block.efficiency.amount;
    if (!nodes.has(name)) nodes.set(name, { name, on: sides[i]!, efficiency, at: positions?.[i] });
  });
  const inPlan = positions !== undefined && positions.every((p) => p !== undefined);
  return { nodes: [...nodes.values()], ropes: [{ name: line, path: names }], hauled: line, heading: inPlan ? { x_m: 1, y_m: 0 } : undefined };
}

/** Places by the `stands` statements, by name; the load is the origin. */
export function standsIn(block: BoundBlock): ReadonlyMap<string, PlanPosition> {
  const stands = new Map<string, PlanPosition>();
  for (const statement of block.statements) {
    if (statement.definition.head !== 'stands' || statement.broken.size > 0) continue;
    const what = nameOf(statement.values, 'what');
    const metres = (key: string): number => quantityOf(statement.values, key)?.value ?? 0;
    if (what !== undefined) stands.set(what.name, { x_m: metres('ahead') - metres('behind'), y_m: metres('left') - metres('right') });
  }
  return stands;
}

/** Whether a block has a place of its own in plan, and not only that of what holds it. */
export const isPlaced = (block: BoundBlock, name: string): boolean => standsIn(block).has(name);

/** Places along the line, from the winch to its end. Undefined when none is given. */
function placesOf(input: RiggingInput, blocks: readonly PullBlock[], winchMoves: boolean, endMoves: boolean): (PlanPosition | undefined)[] | undefined {
  const stands = standsIn(input.block);
  if (stands.size === 0) return undefined;
  const origin: PlanPosition = { x_m: 0, y_m: 0 };
  const at = (isOnLoad: boolean, ...names: (string | undefined)[]): PlanPosition | undefined => names.flatMap((n) => (n === undefined ? [] : (stands.get(n) ?? [])))[0] ?? (isOnLoad ? origin : undefined);
  const places = [at(winchMoves, input.winch, input.winchVehicle), ...blocks.map((b) => at(b.moves === 'load', b.name, b.holder?.name)), endMoves ? at(true, input.end?.name) : middleOf([...new Set(input.ends.map((end) => end.name))].map((name) => stands.get(name)))];
  // The pull draws a block away from what holds it, as far as what is between them bridges for sure. What is nearest settles in a few rounds.
  const drawn = blocks.map((b) => (b.run === undefined || stands.has(b.name) ? 0 : leastBridged(b.run)));
  const held = [...places];
  for (const [i, least] of drawn.entries()) {
    // As long as the way itself, it leaves no place for the block.
    if (least > 0 && Math.min(distance(held[i + 1], held[i]), distance(held[i + 1], held[i + 2])) <= least) [places[i + 1], drawn[i]] = [undefined, 0];
  }
  for (let round = 0; round < 20 && drawn.some((least) => least > 0); round += 1) {
    for (const [i, least] of drawn.entries()) if (least > 0) places[i + 1] = drawnFrom(held[i + 1], least, places[i + 1], places[i], places[i + 2]);
  }
  return places;
}

const distance = (a: PlanPosition | undefined, b: PlanPosition | undefined): number => (a === undefined || b === undefined ? Infinity : Math.hypot(a.x_m - b.x_m, a.y_m - b.y_m));

const leastBridged = (run: Run): number => {
  const bridged = bridgedBy(run, undefined);
  return isUnknown(bridged) ? 0 : bridged.amount.low;
};

/** So far from what holds it, the way in which the two parts together pull it; where they do not say which way, where it is held. */
function drawnFrom(held: PlanPosition | undefined, distance_m: number, here: PlanPosition | undefined, before: PlanPosition | undefined, behind: PlanPosition | undefined): PlanPosition | undefined {
  const pull = pullAt(here, before, behind);
  const length = pull === undefined ? 0 : Math.hypot(pull.x_m, pull.y_m);
  if (held === undefined || pull === undefined || length < 1e-6) return held;
  return { x_m: held.x_m + (distance_m * pull.x_m) / length, y_m: held.y_m + (distance_m * pull.y_m) / length };
}

/** Where a line goes that several places hold together: between them. Unknown where one of them is, and where there is none. */
function middleOf(places: readonly (PlanPosition | undefined)[]): PlanPosition | undefined {
  const known = places.filter((p): p is PlanPosition => p !== undefined);
  if (known.length === 0 || known.length < places.length) return undefined;
  return { x_m: known.reduce((sum, p) => sum + p.x_m, 0) / known.length, y_m: known.reduce((sum, p) => sum + p.y_m, 0) / known.length };
}

/** A vehicle that is called an anchor: which one it is. */
const isItself = ({ sort, vehicle }: Holder): string => (sort === 'anchor' ? `is \`${vehicle}\` and ` : '');

function whichOne({ sort, name, vehicle, block }: Holder): Pick<Problem, 'related'> {
  const statement = sort === 'anchor' && block !== undefined ? statementOf(block, 'vehicle') : undefined;
  return statement === undefined ? {} : { related: [{ place: statement.place, message: `\`${name}\` is \`${vehicle}\`` }] };
}

function problemsBefore(input: RiggingInput, blocks: readonly PullBlock[], winchMoves: boolean, endMoves: boolean): Problem[] {
  const found: Problem[] = [];
  const name = input.block.name ?? 'pull';
  for (const b of blocks) {
    const wrong = b.holders.find((holder) => moves(holder, input, winchMoves) !== (b.moves === 'load'));
    if (wrong === undefined) continue;
    if (b.moves === 'load') found.push({ code: 'block-cannot-move', place: b.place, message: `\`${b.name}\` is to travel with the load, and \`${wrong.name}\`, which holds it, stands still`, help: 'write `fixed`, or make it fast to the load' });
    else found.push({ code: 'block-cannot-move', place: b.place, message: `\`${b.name}\` is to stand still, and \`${wrong.name}\`, which holds it, ${isItself(wrong)}moves with the load`, help: 'write `travelling`, or make it fast to an anchor', ...whichOne(wrong) });
  }
  if (input.endCause !== undefined) return found;
  const [moving, standing] = [input.ends.find((end) => moves(end, input, winchMoves)), input.ends.find((end) => !moves(end, input, winchMoves))];
  if (moving !== undefined && standing !== undefined) {
    found.push({ code: 'end-stands-and-moves', place: input.endPlace, message: `the far end of the line of \`${name}\` is fast to \`${standing.name}\`, which stands, and to \`${moving.name}\`, which ${isItself(moving)}moves with the load`, help: 'make it fast to the one or to the other', ...whichOne(moving) });
    return found;
  }
  const anchored = !winchMoves || !endMoves || blocks.some((b) => b.moves === 'ground');
  const loaded = winchMoves || endMoves || blocks.some((b) => b.moves === 'load');
  if (input.end === undefined && input.loadVehicle !== undefined) {
    if (winchMoves) found.push({ code: 'pull-without-anchor', place: input.endPlace, message: `\`${name}\` has no anchor: nothing is written that holds the far end of its line`, help: 'end its chain at an anchor, or write `back-to`' });
    else found.push({ code: 'pull-without-load', place: input.endPlace, message: `the far end of the line of \`${name}\` is fast to nothing`, help: `end its chain at \`${input.loadVehicle}\` and the recovery point that is used` });
  } else if (!anchored && input.end?.sort === 'anchor') found.push({ code: 'pull-without-anchor', place: input.endPlace, message: `\`${name}\` has no anchor: \`${input.end.name}\` is \`${input.end.vehicle}\`, which moves with the load`, help: `lead the line over a block at an anchor outside \`${input.end.vehicle}\`, or end its chain at one`, ...whichOne(input.end) });
  else if (!anchored) found.push({ code: 'pull-without-anchor', place: input.endPlace, message: `\`${name}\` has no anchor: everything its line touches moves with the load`, help: 'lead the line over a block at an anchor, or end its chain at one' });
  else if (winchMoves && input.winchVehicle !== undefined && isWeightAlone(input.block)) found.push({ code: 'pull-without-load', place: input.endPlace, message: `what the line of \`${name}\` moves is \`${input.winchVehicle}\`, and the load is written as a weight of its own, fast to nothing`, help: `write \`load  ${input.winchVehicle}\`, with the weight behind it where it is another one today; or end the chain at the load` });
  else if (!loaded) found.push({ code: 'pull-without-load', place: input.endPlace, message: `nothing that the line of \`${name}\` touches is fast to ${input.loadVehicle === undefined ? 'the load' : `\`${input.loadVehicle}\``}`, help: 'end its chain at the load, or hang a `travelling` block on it' });
  return found;
}

const codes: Readonly<Partial<Record<RiggingProblem['problem'], string>>> = {
  'no-anchor': 'pull-without-anchor', 'no-load': 'pull-without-load', 'closed-chain': 'block-used-twice', 'block-used-twice': 'block-used-twice', 'block-cannot-move': 'block-cannot-move', 'same-place': 'same-place', 'load-not-pulled': 'load-not-pulled',
};

function problemOf(problem: RiggingProblem, input: RiggingInput, blocks: readonly PullBlock[]): Problem {
  const about = blocks.findLast((b) => problem.about.includes(b.name));
  const help: Readonly<Record<string, string>> = {
    'block-used-twice': 'use a second block, or one with two sheaves written as two blocks',
    'same-place': 'correct `stands` of one of them',
    'load-not-pulled': 'look at `stands` again: ahead is where the load is meant to go',
  };
  const code = codes[problem.problem] ?? 'load-not-pulled';
  return { code, place: about?.place ?? input.endPlace, message: problem.says, help: help[code] ?? 'lead the line so that something that stands and something that moves hold it' };
}

/** What is left of the tension behind some blocks. */
function shareAt(blocks: readonly PullBlock[]): Value {
  if (blocks.length === 0) return { amount: exactly(1), kind: 'share', origin: { from: 'constant', source: sources.statics } };
  let amount: Amount = exactly(1);
  const inputs = [];
  for (const [i, b] of blocks.entries()) {
    if (isUnknown(b.efficiency)) return b.efficiency;
    amount = { low: amount.low * b.efficiency.amount.low, high: amount.high * b.efficiency.amount.high };
    inputs.push({ symbol: `e_${i + 1}`, meaning: `share of the tension that passes \`${b.name}\``, given: b.efficiency });
  }
  return asGiven({ calculation: 'share-behind-blocks', means: 'share of the tension behind the blocks', symbol: 's', kind: 'share', amount, formula: `s = ${inputs.map((i) => i.symbol).join(' × ')}`, inputs, sources: [sources.statics], assumptions: [], notes: [] });
}

/** Pull on the load for one of line pull: by the plan where there is one, else part by part. */
function advantageOf(blocks: readonly PullBlock[], parts: readonly PullPart[], answer: RiggingAnswer | undefined): Value {
  if (blocks.length === 0 && (answer === undefined || !answer.inPlan)) return { amount: exactly(1), kind: 'count', origin: { from: 'constant', source: sources.statics } };
  const inputs = [];
  for (const [i, b] of blocks.entries()) {
    if (isUnknown(b.efficiency)) return b.efficiency;
    inputs.push({ symbol: `e_${i + 1}`, meaning: `share of the tension that passes \`${b.name}\``, given: b.efficiency });
  }
  const base = { calculation: 'rigging-advantage', means: 'advantage of the rigging, friction counted', symbol: 'MA', kind: 'count' as const, notes: [] };
  if (answer?.inPlan === true) {
    return asGiven({ ...base, amount: answer.advantage, formula: 'MA = pull of all parts on the load, the way it is to go', inputs, sources: [sources.statics], assumptions: ['places as written; line and straps weigh nothing'] });
  }
  const terms: string[] = [];
  let [low, high] = [0, 0];
  for (const [i, part] of parts.entries()) {
    if (!part.crosses) continue;
    const share = (part.share as Given).amount;
    const bent = [blocks[i - 1], blocks[i]].filter((b): b is PullBlock => b !== undefined && b.doubles);
    for (const b of bent) if (isUnknown(b.angle)) return b.angle;
    const angles = bent.map((b) => ({ b, amount: (b.angle as Given).amount }));
    low += share.low * Math.cos(Math.max(0, ...angles.map((a) => a.amount.high)) / 2);
    high += share.high * Math.cos(Math.max(0, ...angles.map((a) => a.amount.low)) / 2);
    const product = ['1', ...blocks.slice(0, i).map((_, k) => `e_${k + 1}`)].slice(i > 0 ? 1 : 0).join(' ');
    terms.push(angles.length === 0 ? product : `${product} cos(${angles.length === 1 ? `θ_${blocks.indexOf(angles[0]!.b) + 1}` : 'the wider angle'}/2)`);
  }
  for (const [i, b] of blocks.entries()) if (b.doubles) inputs.push({ symbol: `θ_${i + 1}`, meaning: `angle between the parts at \`${b.name}\``, given: b.angle as Given });
  if (!(low > 1e-9)) return unknown({ key: `advantage at ${blocks[0]?.name ?? ''}`, says: 'the two parts of the line pull against each other and move nothing', help: 'lead them closer together', place: blocks[0]?.place });
  return asGiven({ ...base, amount: { low, high }, formula: `MA = ${terms.join(' + ')}`, inputs, sources: [sources.statics, partsAtAngle], assumptions: ['parts without an angle lie along the pull'] });
}

/** The run's own end as a holder. */
export function holderOf(run: Run | undefined): Holder | undefined {
  const link = run?.holder;
  if (link === undefined) return undefined;
  const name = linkName(link) ?? link.name;
  const block = link.declaration?.block;
  const isVehicle = link.sort === 'vehicle';
  const vehicle = isVehicle ? name : vehicleOfAnchor(block);
  // A point is one and the same under every name that the file has for its vehicle.
  const called = !isVehicle && link.point !== undefined && link.link.link === 'name' ? `${vehicle} ${link.link.part?.name}` : link.name;
  return { name, called, sort: isVehicle ? 'vehicle' : 'anchor', place: link.place, block, vehicle, point: link.point };
}

/** What holds the ends of a run, each leg's; nothing for one that leads nowhere. */
export const holdersOf = (run: Run | undefined): (Holder | undefined)[] => (run === undefined || run.legs.length === 0 ? [holderOf(run)] : run.legs.flatMap(holdersOf));

/** The vehicle that stands as an anchor, by name: it need not be declared to be the one that is pulled. */
export function vehicleOfAnchor(block: BoundBlock | undefined): string | undefined {
  const statement = block === undefined ? undefined : statementOf(block, 'vehicle');
  return statement === undefined ? undefined : nameOf(statement.values, 'vehicle')?.name;
}
