import { isAbove } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { asGiven, isUnknown, lowerOf, mostOf, noMoreThan, unknown, type Cause, type Value } from '../mechanics/derivation.ts';
import { overloadLimit } from '../mechanics/overload-limit.ts';
import { strengthOfWorstPlace, worstPlace, type StrengthOfPlace } from '../mechanics/strength-of-worst-place.ts';
import { quantityOf, type BoundBlock, type BoundStatement, type Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { replayLogbook, replayRepair } from '../model/line-history.ts';
import { finishedLength, type DamageFact, type EndFacts, type Joint, type LineState, type LogEntry, type Lost, type PieceState, sincePassed, type Scenario } from '../model/line-state.ts';
import { derivedFrom } from '../trade/sources.ts';
import { between, type Amount } from '../units/amount.ts';
import { damagePlace } from './damage-place.ts';
import { notWritten, remedyFor, type Remedy } from './damage-remedy.ts';
import { damageWords } from './damage-words.ts';
import { causeOfLost, writtenValue } from './facts.ts';
import { heatLimit } from './heat-limit.ts';
import { agesOutdoors, lineFacts, type LineFacts } from './line-facts.ts';
import { marksBeside, marksOf, placeOf, stretchOf, type PlacedMark } from './placed-marks.ts';
import type { Practice } from './practice.ts';
import { show } from './show.ts';
import { assessEnd, type AssessedEnd } from './splice-end.ts';
import { overlaps, spliceStretches, type SpliceStretches } from './splice-stretches.ts';
import { lossTogether, strengthAt, wornShare } from './strength-at-damage.ts';
import { fromEnds, mayTouch, type LaidStretch, type StretchFromEnds } from './stretch-from-ends.ts';

export type { Remedy };

export interface AssessedDamage {
  readonly fact: DamageFact;
  /** Finished distance from the inboard end as the piece lies now (m). */
  readonly from: Amount | undefined;
  readonly to: Amount | undefined;
  /** The same from both ends; undefined also where the length of the piece is not known. */
  readonly stretch: StretchFromEnds | undefined;
  readonly remedy: Remedy;
  /** Why that remedy, as a clause. */
  readonly because: string;
  /** What was not written down, as a clause, where the remedy rests on it. */
  readonly notMeasured: string | undefined;
  /** All damage that counts as one place with this one, this one included. */
  readonly zone: readonly DamageFact[];
  /** Share of the strands that is cut or worn in the zone, where both together reach the limit of wear and neither does alone. */
  readonly together: string | undefined;
  /** Cut strands in the zone. */
  readonly strands: number;
  readonly strength: Value;
}

/** A place that got hot. */
export interface AssessedHeat {
  readonly fact: DamageFact;
  readonly from: Amount | undefined;
  readonly to: Amount | undefined;
  readonly stretch: StretchFromEnds | undefined;
  /** Unknown where it got hotter than the fibre bears. */
  readonly strength: Value;
}

export interface AssessedPiece {
  readonly name: string;
  readonly named: Place;
  readonly line: LineFacts;
  /** The two ends of what the piece may be: the longer and the shorter one. */
  readonly long: PieceState;
  readonly short: PieceState;
  /** Finished, bearing point to bearing point. */
  readonly length: Value;
  readonly damages: readonly AssessedDamage[];
  readonly heats: readonly AssessedHeat[];
  readonly inboard: AssessedEnd;
  readonly outboard: AssessedEnd;
  readonly joints: readonly AssessedEnd[];
  readonly splices: SpliceStretches;
  /** Strength of the line between its ends: damage and joints. */
  readonly body: Value;
  /** Strength of the whole piece between its ends; a drum end without an eye is held by the kept wraps and does not count. */
  readonly strength: Value;
  readonly weakest: StrengthOfPlace | undefined;
  /** The same of a line that hangs from its drum: the kept wraps hold the inboard end, however it is made. */
  readonly hanging: { readonly strength: Value; readonly weakest: StrengthOfPlace | undefined };
  readonly retired: LogEntry | undefined;
  /** An entry that could not be read may say more, a joint may be here and be less, or overlap the splice beside it: what holds without it is not judged. */
  readonly incomplete: Cause | undefined;
}

export interface AssessedLine {
  readonly kind: 'line';
  readonly block: BoundBlock;
  readonly facts: LineFacts;
  readonly long: LineState;
  readonly short: LineState;
  readonly pieces: ReadonlyMap<string, AssessedPiece>;
  /** Each pull of the logbook with its piece as it was before. */
  readonly pulled: ReadonlyMap<BoundStatement, AssessedPiece>;
  /** Pulls that were so high that nobody can say what the line holds since. */
  readonly overloads: Overloads;
  readonly problems: readonly Problem[];
}

type Overloads = ReadonlyMap<BoundStatement, Cause>;

export const scenarios = (practice: Practice): { long: Scenario; short: Scenario } => ({
  long: { contraction: practice.number('splice-shortening', 'low'), eyeLoop_d: practice.number('eye-size', 'low') },
  short: { contraction: practice.number('splice-shortening', 'high'), eyeLoop_d: practice.number('eye-size', 'high') },
});

export function assessLine(block: BoundBlock, practice: Practice, day: DayNumber): AssessedLine {
  const facts = lineFacts(block, practice, day);
  const scenario = scenarios(practice);
  const [long, short] = [replayLogbook(block, day, scenario.long), replayLogbook(block, day, scenario.short)];
  const pulled = pulledPieces(facts, long, short);
  return assessStates(block, facts, long, short, pulled, overloadsOf(facts, pulled));
}

/** The line as a repair would leave it. */
export function assessRepaired(line: AssessedLine, repair: BoundBlock): AssessedLine {
  const { long, short } = scenarios(line.facts.practice);
  return assessStates(line.block, line.facts, replayRepair(line.block, line.long, repair, long), replayRepair(line.block, line.short, repair, short), line.pulled, line.overloads);
}

function assessStates(block: BoundBlock, facts: LineFacts, long: LineState, short: LineState, pulled: ReadonlyMap<BoundStatement, AssessedPiece>, overloads: Overloads): AssessedLine {
  const pieces = new Map<string, AssessedPiece>();
  for (const [name, piece] of long.pieces) pieces.set(name, assessPiece(facts, piece, short.pieces.get(name) ?? piece, overloads));
  // What only the shorter case meets is doubtful, and doubt is said; the same problem of both is said once.
  const seen = new Set(long.problems.map((p) => `${p.code}:${p.place.start}`));
  return { kind: 'line', block, facts, long, short, pieces, pulled, overloads, problems: [...long.problems, ...short.problems.filter((p) => !seen.has(`${p.code}:${p.place.start}`))] };
}

/** Pieces before pulls, for as long as the same logbook is worked out up to one day and the next. */
const piecesBefore = new WeakMap<Practice, WeakMap<object, { readonly order: readonly BoundStatement[]; readonly pieces: Map<BoundStatement, AssessedPiece> }>>();

/** What was worked out before, as far as the facts and the entries above are still the same. */
function knownBefore({ block, practice }: LineFacts): Map<BoundStatement, AssessedPiece> {
  const order = [...block.statements.filter((s) => s.day === undefined), ...block.statements.filter((s) => s.day !== undefined).sort((a, b) => a.day! - b.day!)];
  const ofPractice = piecesBefore.get(practice) ?? new WeakMap();
  piecesBefore.set(practice, ofPractice);
  const known = ofPractice.get(block.chunk);
  let same = 0;
  while (same < order.length && known?.order[same] === order[same]) same++;
  if (known !== undefined && same === order.length) return known.pieces;
  const pieces = new Map<BoundStatement, AssessedPiece>();
  for (const s of order.slice(0, same)) {
    const piece = known!.pieces.get(s);
    if (piece !== undefined) pieces.set(s, piece);
  }
  ofPractice.set(block.chunk, { order, pieces });
  return pieces;
}

/** Every pull in order, each with its piece as it was before, whatever earlier pulls may have done to it. */
function pulledPieces(facts: LineFacts, long: LineState, short: LineState): ReadonlyMap<BoundStatement, AssessedPiece> {
  if (long.pulls.length === 0) return nothingPulled;
  const known = knownBefore(facts);
  const ages = agesOutdoors(facts.block);
  const twins = new Map(short.pulls.map(({ statement, piece }) => [statement, piece]));
  const found = new Map<BoundStatement, AssessedPiece>();
  let last: AssessedPiece | undefined;
  for (const { statement, piece } of long.pulls) {
    const before: AssessedPiece = known.get(statement) ?? (!ages && last !== undefined && isSameLine(last.long, piece) ? last : assessPiece(ages ? lineFacts(facts.block, facts.practice, statement.day!) : facts, piece, twins.get(statement) ?? piece, noOverloads));
    known.set(statement, before);
    found.set(statement, before);
    last = before;
  }
  return found;
}

const nothingPulled: ReadonlyMap<BoundStatement, AssessedPiece> = new Map();
const noOverloads: Overloads = new Map();

/** Each pull is compared with what its piece held at that moment by the same figures. */
function overloadsOf(facts: LineFacts, pulled: ReadonlyMap<BoundStatement, AssessedPiece>): Overloads {
  if (pulled.size === 0) return noOverloads;
  const found = new Map<BoundStatement, Cause>();
  const o = facts.practice.value('overload-share');
  for (const [statement, { name, strength, body, line }] of pulled) {
    const load = quantityOf(statement.values, 'load');
    // An end or damage of unknown strength may be cut off later; the line between was pulled all the same.
    const F_b = isUnknown(strength) ? (isUnknown(body) ? line.base : body) : strength;
    const limit = overloadLimit({ F_b, o });
    if (load === undefined || isUnknown(limit) || !isAbove(load.value, limit.amount.low)) continue;
    found.set(statement, { key: `overload ${statement.place.start} of ${facts.name}`, says: `what a pull of ${show(writtenValue(load))} left of \`${name}\` is not known`, help: 'retire it, or ask its maker', place: load.place, reported: true });
  }
  return found;
}

/** True when nothing but the logbook has changed from one piece to the other. */
const isSameLine = (a: PieceState, b: PieceState): boolean => a.name === b.name && a.axis === b.axis && a.marks === b.marks && a.buried === b.buried && a.joints === b.joints && a.inboard === b.inboard && a.outboard === b.outboard && a.lost === b.lost;

const replayed = derivedFrom('logbook-replay', 'the logbook replayed: cuts, splices and joins in order of their dates');

function lengthOfPiece(facts: LineFacts, long: PieceState, short: PieceState): Value {
  const [a, b] = [finishedLength(long), finishedLength(short)];
  const lost = long.lost ?? short.lost;
  if (a === undefined || b === undefined) {
    return unknown(lost !== undefined ? causeOfLost(lost, `length of ${long.name}`) : { key: `length of ${long.name}`, says: `length of \`${long.name}\` cannot be worked out`, help: 'complete its logbook', place: long.named });
  }
  if (!isUnknown(facts.length) && long.name === facts.name && long.outboard.supplied && long.inboard.supplied && long.joints.length === 0 && a === facts.length.amount.low) return facts.length;
  const inputs = isUnknown(facts.length) ? [] : [{ symbol: 'L_0', meaning: 'length as fitted', given: facts.length }];
  const c = facts.practice.value('splice-shortening');
  const shortened = long.buried.length > 0 && !isUnknown(c) ? [{ symbol: 'c', meaning: 'share by which the standing part shortens over a buried tail', given: c }] : [];
  return asGiven({
    calculation: 'piece-length', means: `finished length of \`${long.name}\``, symbol: 'L', amount: between(a, b), kind: 'length', formula: 'L = L_0 less what was cut off and what its splices use', inputs: [...inputs, ...shortened], sources: [replayed], assumptions: [], notes: [],
  });
}

function assessPiece(facts: LineFacts, long: PieceState, short: PieceState, overloads: Overloads): AssessedPiece {
  const overload = overloads.size === 0 ? undefined : sincePassed(long.log).map((entry) => overloads.get(entry.statement)).find((cause) => cause !== undefined);
  const line = overload === undefined || isUnknown(facts.base) ? facts : { ...facts, base: unknown(overload, facts.base) };
  const length = lengthOfPiece(line, long, short);
  const marks = marksOf(long, short);
  const heats = marks.filter(({ fact }) => fact.kind === 'heated').map((mark) => assessHeat(line, mark));
  const damages = assessDamages(line, marks.filter(({ fact }) => fact.kind !== 'heated')).map((damage) => inHeat(damage, heats));
  const spoiled = [long.lost, short.lost].filter((lost) => lost?.reported === true);
  const held = jointsOf(long, short);
  // A splice that cannot be made leaves no end that anything could be said about.
  const unspoiled = (end: AssessedEnd): AssessedEnd => {
    const lost = spoiled.find((l) => l!.place.chunk === end.facts.place.chunk && l!.place.start === end.facts.place.start);
    return lost === undefined ? end : { ...end, strength: unknown(causeOfLost(lost, `ends of ${long.name}`)) };
  };
  const sound = {
    inboard: unspoiled(assessEnd('inboard', inEither(long.inboard, short.inboard), line, long.name)),
    outboard: unspoiled(assessEnd('outboard', inEither(long.outboard, short.outboard), line, long.name)),
    joints: held.map(({ joint, twin }) => ({ ...assessEnd('joint', inEither(joint.end, twin?.end), line, long.name), isInDoubt: isInDoubt({ joint, twin }) })),
  };
  const { long: longest, short: shortest } = scenarios(line.practice);
  const laid = spliceStretches({ state: long, scenario: longest }, { state: short, scenario: shortest }, [sound.inboard, ...sound.joints, sound.outboard], line);
  const now = new Map([sound.inboard, sound.outboard, ...sound.joints].map((end) => [end, withDamage(end, laid, line, damages, knotStretch(end.which, long, short, line))]));
  const [inboard, outboard, joints] = [now.get(sound.inboard)!, now.get(sound.outboard)!, sound.joints.map((joint) => now.get(joint)!)];
  const splices: SpliceStretches = {
    stretches: laid.stretches.map((s) => ({ ...s, end: now.get(s.end)! })),
    unplaced: laid.unplaced.map((u) => ({ ...u, end: now.get(u.end)! })),
    gaps: laid.gaps.map((g) => ({ ...g, one: now.get(g.one)!, other: now.get(g.other)! })),
  };
  const bodyPlaces: [StrengthOfPlace, ...StrengthOfPlace[]] = [{ name: 'line without damage', strength: line.base }];
  for (const damage of damages) bodyPlaces.push(new DamagedPlace(damage));
  for (const heat of heats) if (isUnknown(heat.strength)) bodyPlaces.push({ name: 'heated line', strength: heat.strength });
  for (const joint of joints) bodyPlaces.push({ name: 'end-to-end splice', strength: joint.strength });
  const overlap = splices.gaps.find(overlaps);
  if (overlap !== undefined) bodyPlaces.push({ name: 'overlapping splices', strength: unknown({ key: `overlap in ${long.name}`, says: `what overlapping splices leave of \`${long.name}\` is not known`, help: 'cut a piece out, or bury less where the maker allows it', place: overlap.other.facts.place, reported: true }) });
  const hanging: [StrengthOfPlace, ...StrengthOfPlace[]] = [...bodyPlaces, { name: 'outboard end', strength: outboard.strength }];
  const whole: [StrengthOfPlace, ...StrengthOfPlace[]] = [...hanging];
  // An inboard end made to be loaded counts too; a lug or a bare end lies under the kept wraps.
  if (inboard.buried !== undefined || inboard.facts.form === 'knot' || (inboard.facts.form === 'hook' && inboard.facts.holds !== undefined)) whole.push({ name: 'inboard end', strength: inboard.strength });
  const unsure = held.find(isInDoubt);
  // Such a joint may be less than it says: what holds with it is not judged.
  const incomplete = long.incomplete ?? short.incomplete ?? (unsure === undefined ? undefined : (unsure.joint.doubt ?? unsure.twin?.doubt ?? whetherHere(unsure.joint, long.name)));
  return {
    name: long.name,
    named: long.named,
    line,
    long,
    short,
    length,
    damages,
    heats,
    inboard,
    outboard,
    joints,
    splices,
    body: asGiven(strengthOfWorstPlace(bodyPlaces)),
    strength: asGiven(strengthOfWorstPlace(whole)),
    weakest: worstPlace(whole),
    hanging: { strength: asGiven(strengthOfWorstPlace(hanging)), weakest: worstPlace(hanging) },
    retired: long.retired ?? short.retired,
    incomplete: incomplete === undefined ? nobodyKnowsIfApart(splices) : causeOfLost(incomplete, `logbook of ${line.name}`),
  };
}

/** Why nobody can say that a joint and the splice beside it do not overlap. Two eyes alone have the whole line between them. */
function nobodyKnowsIfApart({ gaps }: SpliceStretches): Cause | undefined {
  for (const { one, other, gap } of gaps) if (isUnknown(gap) && (one.which === 'joint' || other.which === 'joint')) return gap.unknown;
  return undefined;
}

/** A joint of a piece, and the same as the other way left it; undefined where that way cut it off. */
interface HeldJoint {
  readonly joint: Joint;
  readonly twin: Joint | undefined;
}

const isInDoubt = ({ joint, twin }: HeldJoint): boolean => twin === undefined || joint.doubt !== undefined || twin.doubt !== undefined;

function jointsOf(long: PieceState, short: PieceState): HeldJoint[] {
  const twinIn = (state: PieceState, { end: { statement } }: Joint): Joint | undefined => state.joints.find((j) => j.end.statement === statement);
  return [...long.joints.map((joint) => ({ joint, twin: twinIn(short, joint) })), ...short.joints.flatMap((joint) => (twinIn(long, joint) === undefined ? [{ joint, twin: undefined }] : []))];
}

const whetherHere = (joint: Joint, name: string): Lost => ({ says: `whether the joint in \`${name}\` lies in it is not known`, help: 'measure where it lies, and write a line of its own for each piece', place: joint.end.place, reported: false });

/** An end that a cut went through in one of the two cases may not be whole. */
const inEither = (end: EndFacts, other: EndFacts | undefined): EndFacts => (end.cutThrough !== undefined || other?.cutThrough === undefined || other.place !== end.place ? end : { ...end, cutThrough: other.cutThrough });

/** Named when somebody asks: of hundreds of places one is the weakest. */
class DamagedPlace implements StrengthOfPlace {
  readonly #damage: AssessedDamage;
  readonly strength: Value;

  constructor(damage: AssessedDamage) {
    this.#damage = damage;
    this.strength = damage.strength;
  }

  get name(): string {
    return `${damageWords(this.#damage.fact)} at ${damagePlace(this.#damage)}`;
  }
}

function assessDamages(facts: LineFacts, marks: readonly PlacedMark[]): AssessedDamage[] {
  const worn = new Map(marks.map(({ fact }) => [fact, wornShare(facts, fact)]));
  const near_d = facts.practice.number('near', 'high');
  const near = isUnknown(facts.diameter) ? Infinity : near_d * facts.diameter.amount.high;
  const beside = marksBeside(marks, near * (1 + 1e-9));
  return marks.map((mark, i): AssessedDamage => {
    const { fact } = mark;
    const zone = beside(i).map((j) => marks[j]!.fact);
    const strands = zone.reduce((sum, f) => sum + (f.kind === 'cut' || f.kind === 'pulled' ? (f.strands ?? 1) : 0), 0);
    const { remedy, because } = remedyFor(facts, fact, strands);
    const together = remedy === 'derate' ? lossTogether(facts, zone, strands, worn) : undefined;
    return { fact, from: placeOf(mark, 'from'), to: placeOf(mark, 'to'), stretch: stretchOf(mark), ...(together === undefined ? { remedy, because } : { remedy: 'cut-out', because: `cut strands and wear take ${together} of the strands there` }), together, notMeasured: notWritten(fact), zone, strands, strength: strengthAt(facts, facts.base, fact, zone, strands, worn) };
  });
}

function assessHeat(facts: LineFacts, mark: PlacedMark): AssessedHeat {
  const written = quantityOf(mark.fact.statement.values, 'temperature');
  const limit = heatLimit(facts);
  const strength = ((): Value => {
    if (written === undefined) return facts.base;
    if (isUnknown(limit)) return limit;
    if (!isAbove(written.value, limit.amount.low)) return facts.base;
    return unknown({ key: `heat ${mark.fact.place.start} of ${facts.name}`, says: `what heat of ${show(writtenValue(written))} left of \`${facts.name}\` is not known`, help: 'cut the place out, or retire the line', place: written.place, reported: true });
  })();
  return { fact: mark.fact, from: placeOf(mark, 'from'), to: placeOf(mark, 'to'), stretch: stretchOf(mark), strength };
}

/** The line that a knot may take at an end: as far as damage counts as near. Undefined where the length is not known. */
function knotStretch(which: AssessedEnd['which'], long: PieceState, short: PieceState, { practice, diameter }: LineFacts): StretchFromEnds | undefined {
  const [a, b] = [finishedLength(long), finishedLength(short)];
  if (a === undefined || b === undefined || isUnknown(diameter)) return undefined;
  const near = practice.number('near', 'high') * diameter.amount.high;
  const laid = (total: number): LaidStretch => (which === 'inboard' ? { from: 0, to: near, total } : { from: total - near, to: total, total });
  return fromEnds(laid(a), laid(b));
}

/** Damage where the line got hotter than its fibre bears: what it leaves is not known, and it is cut out with the place. */
function inHeat(damage: AssessedDamage, heats: readonly AssessedHeat[]): AssessedDamage {
  const hot = heats.find(({ strength, stretch }) => isUnknown(strength) && (damage.stretch === undefined || stretch === undefined || mayTouch(damage.stretch, stretch)));
  if (hot === undefined || !isUnknown(hot.strength)) return damage;
  const strength = noMoreThan(unknown(hot.strength.unknown), mostOf(damage.strength));
  // Where all of the line got hot, nothing is gained by cutting out this place.
  return damage.remedy === 'retire' || hot.from === undefined ? { ...damage, strength } : { ...damage, strength, remedy: 'cut-out', because: 'it lies where the line got hotter than its fibre bears' };
}

/** A splice with what damage in its stretch leaves of it: the shares of both count, the one on what the other leaves. */
function withDamage(end: AssessedEnd, { stretches, unplaced }: SpliceStretches, facts: LineFacts, damages: readonly AssessedDamage[], knotted: StretchFromEnds | undefined): AssessedEnd {
  const isKnot = end.facts.form === 'knot';
  const whole = isKnot ? knotted : stretches.find((s) => s.end === end)?.whole;
  if (damages.length === 0 || (whole === undefined && !isKnot && unplaced.every((u) => u.end !== end))) return end;
  const worn = new Map(damages.flatMap(({ zone }) => zone).map((fact) => [fact, wornShare(facts, fact)]));
  let { strength } = end;
  for (const { fact, stretch, zone, strands } of damages) {
    // Whatever lies nobody knows where may lie here.
    if (whole !== undefined && stretch !== undefined && !mayTouch(stretch, whole)) continue;
    strength = lowerOf(strength, strengthAt(facts, end.strength, fact, zone, strands, worn));
  }
  return strength === end.strength ? end : { ...end, strength };
}
