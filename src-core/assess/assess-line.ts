import type { Place } from '../base/span.ts';
import { cutStrandShare } from '../mechanics/cut-strand-share.ts';
import { asGiven, isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { strengthAfterAbrasion } from '../mechanics/strength-after-abrasion.ts';
import { strengthAfterCutStrands } from '../mechanics/strength-after-cut-strands.ts';
import { strengthAfterLosses } from '../mechanics/strength-after-losses.ts';
import { strengthOfWorstPlace, worstPlace, type StrengthOfPlace } from '../mechanics/strength-of-worst-place.ts';
import type { BoundBlock, Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { replayLogbook, replayRepair } from '../model/line-history.ts';
import { finishedAt, finishedLength, type DamageFact, type LineState, type LogEntry, type Mark, type PieceState, type Scenario } from '../model/line-state.ts';
import { derivedFrom } from '../trade/sources.ts';
import { between, exactly, type Amount } from '../units/amount.ts';
import { damagePlace } from './damage-place.ts';
import { damageWords } from './damage-words.ts';
import { causeOfLost, writtenValue } from './facts.ts';
import { lineFacts, type LineFacts } from './line-facts.ts';
import type { Practice } from './practice.ts';
import { assessEnd, type AssessedEnd } from './splice-end.ts';
import { overlaps, spliceStretches, type SpliceStretches } from './splice-stretches.ts';

/** What to do about a damage: the trade's four answers, the mildest first. */
export type Remedy = 'clean' | 'derate' | 'cut-out' | 'retire';

export interface AssessedDamage {
  readonly fact: DamageFact;
  /** Finished distance from the inboard end as the piece lies now (m). */
  readonly from: Amount | undefined;
  readonly to: Amount | undefined;
  readonly remedy: Remedy;
  /** Why that remedy, as a clause. */
  readonly because: string;
  /** What was not written down, as a clause, where the remedy rests on it. */
  readonly notMeasured: string | undefined;
  /** All damage that counts as one place with this one, this one included. */
  readonly zone: readonly DamageFact[];
  /** Cut strands in the zone. */
  readonly strands: number;
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
  readonly inboard: AssessedEnd;
  readonly outboard: AssessedEnd;
  readonly joints: readonly AssessedEnd[];
  readonly splices: SpliceStretches;
  /** Strength of the line between its ends: damage and joints. */
  readonly body: Value;
  /** Strength of the whole piece between its ends; a drum end without an eye is held by the kept wraps and does not count. */
  readonly strength: Value;
  readonly weakest: StrengthOfPlace | undefined;
  readonly retired: LogEntry | undefined;
  /** An entry that could not be read may say more: what holds without it is not judged. */
  readonly incomplete: Cause | undefined;
}

export interface AssessedLine {
  readonly kind: 'line';
  readonly block: BoundBlock;
  readonly facts: LineFacts;
  readonly long: LineState;
  readonly short: LineState;
  readonly pieces: ReadonlyMap<string, AssessedPiece>;
  readonly problems: readonly Problem[];
}

export const scenarios = (practice: Practice): { long: Scenario; short: Scenario } => ({
  long: { contraction: practice.number('splice-shortening', 'low'), eyeLoop_d: practice.number('eye-size', 'low') },
  short: { contraction: practice.number('splice-shortening', 'high'), eyeLoop_d: practice.number('eye-size', 'high') },
});

export function assessLine(block: BoundBlock, practice: Practice, day: DayNumber): AssessedLine {
  const facts = lineFacts(block, practice, day);
  const { long, short } = scenarios(practice);
  return assessStates(block, facts, replayLogbook(block, day, long), replayLogbook(block, day, short));
}

/** The line as a repair would leave it. */
export function assessRepaired(line: AssessedLine, repair: BoundBlock): AssessedLine {
  const { long, short } = scenarios(line.facts.practice);
  return assessStates(line.block, line.facts, replayRepair(line.block, line.long, repair, long), replayRepair(line.block, line.short, repair, short));
}

function assessStates(block: BoundBlock, facts: LineFacts, long: LineState, short: LineState): AssessedLine {
  const pieces = new Map<string, AssessedPiece>();
  for (const [name, piece] of long.pieces) pieces.set(name, assessPiece(facts, piece, short.pieces.get(name) ?? piece));
  // What only the shorter case meets is doubtful, and doubt is said; the same problem of both is said once.
  const seen = new Set(long.problems.map((p) => `${p.code}:${p.place.start}`));
  return { kind: 'line', block, facts, long, short, pieces, problems: [...long.problems, ...short.problems.filter((p) => !seen.has(`${p.code}:${p.place.start}`))] };
}

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

function assessPiece(facts: LineFacts, long: PieceState, short: PieceState): AssessedPiece {
  const length = lengthOfPiece(facts, long, short);
  const places = new Map(short.marks.map((mark) => [mark.fact, mark]));
  const worn = new Map(long.marks.map(({ fact }) => [fact, wornShare(facts, fact)]));
  const damages = long.marks.map((mark, index) => assessDamage(facts, mark, places.get(mark.fact) ?? short.marks[index], { long, short, worn }));
  const inboard = assessEnd('inboard', long.inboard, facts, long.name);
  const outboard = assessEnd('outboard', long.outboard, facts, long.name);
  const joints = long.joints.map((joint) => assessEnd('joint', joint.end, facts, long.name));
  const { long: longest, short: shortest } = scenarios(facts.practice);
  const splices = spliceStretches({ state: long, scenario: longest }, { state: short, scenario: shortest }, [inboard, ...joints, outboard], facts);
  const bodyPlaces: [StrengthOfPlace, ...StrengthOfPlace[]] = [{ name: 'line without damage', strength: facts.base }];
  for (const damage of damages) bodyPlaces.push({ name: placeOfDamage(damage), strength: damage.strength });
  for (const joint of joints) bodyPlaces.push({ name: 'end-to-end splice', strength: joint.strength });
  const overlap = splices.gaps.find(overlaps);
  if (overlap !== undefined) bodyPlaces.push({ name: 'overlapping splices', strength: unknown({ key: `overlap in ${long.name}`, says: `what overlapping splices leave of \`${long.name}\` is not known`, help: 'cut a piece out, or bury less where the maker allows it', place: overlap.other.facts.place, reported: true }) });
  const whole: [StrengthOfPlace, ...StrengthOfPlace[]] = [...bodyPlaces, { name: 'outboard end', strength: outboard.strength }];
  // An inboard end made to be loaded counts too; a lug or a bare end lies under the kept wraps.
  if (inboard.buried !== undefined || inboard.facts.form === 'knot') whole.push({ name: 'inboard end', strength: inboard.strength });
  // A splice that cannot be made leaves no end that anything could be said about.
  const spoiled = [long.lost, short.lost].find((lost) => lost?.reported === true && lost.place.chunk === outboard.facts.place.chunk && lost.place.start === outboard.facts.place.start);
  const incomplete = long.incomplete ?? short.incomplete;
  return {
    name: long.name,
    named: long.named,
    line: facts,
    long,
    short,
    length,
    damages,
    inboard,
    outboard,
    joints,
    splices,
    body: asGiven(strengthOfWorstPlace(bodyPlaces)),
    strength: spoiled === undefined ? asGiven(strengthOfWorstPlace(whole)) : unknown(causeOfLost(spoiled, `ends of ${long.name}`)),
    weakest: spoiled === undefined ? worstPlace(whole) : undefined,
    retired: long.retired,
    incomplete: incomplete === undefined ? undefined : causeOfLost(incomplete, `logbook of ${facts.name}`),
  };
}

const around = (a: number | undefined, b: number | undefined): Amount | undefined => (a === undefined || b === undefined ? undefined : between(a, b));

const placeOfDamage = (damage: AssessedDamage): string => `${damageWords(damage.fact)} at ${damagePlace(damage)}`;

const gap = (a: Mark, b: Mark): number => (a.from === undefined || a.to === undefined || b.from === undefined || b.to === undefined ? 0 : Math.max(0, Math.max(a.from, b.from) - Math.min(a.to, b.to)));

/** The damage of one piece: as it lies there, and the share of strength that each takes by wear. */
interface DamagedPiece {
  readonly long: PieceState;
  readonly short: PieceState;
  readonly worn: ReadonlyMap<DamageFact, Value | undefined>;
}

/** `twin` is the same mark in the shorter case. */
function assessDamage(facts: LineFacts, mark: Mark, twin: Mark | undefined, { long, short, worn }: DamagedPiece): AssessedDamage {
  const { fact } = mark;
  const at = (key: 'from' | 'to'): Amount | undefined => {
    const [a, b] = [mark[key], twin?.[key]];
    return around(a === undefined ? undefined : finishedAt(long, a), b === undefined ? undefined : finishedAt(short, b));
  };
  const near_d = facts.practice.number('near', 'high');
  const near = isUnknown(facts.diameter) ? Infinity : near_d * facts.diameter.amount.high;
  const zone = long.marks.filter((other) => other === mark || gap(mark, other) <= near * (1 + 1e-9)).map((m) => m.fact);
  const strands = zone.reduce((sum, f) => sum + (f.kind === 'cut' || f.kind === 'pulled' ? (f.strands ?? 1) : 0), 0);
  const missing = notWritten(fact);
  const { remedy, because } = remedyFor(facts, fact, strands);
  return { fact, from: at('from'), to: at('to'), remedy, because, notMeasured: missing, zone, strands, strength: strengthAt(facts, fact, zone, strands, worn) };
}

/** What a damage entry leaves out, so that its remedy is the careful one. */
function notWritten(fact: DamageFact): string | undefined {
  if (fact.kind === 'cut' && fact.strands === undefined) return 'how many strands are cut';
  if (fact.kind === 'pulled' && fact.strands === undefined) return 'how many strands are pulled';
  if (fact.kind === 'abrasion' && fact.share === undefined && fact.severity === undefined) return 'how much of the strand volume is gone';
  if (fact.kind === 'glaze' && fact.state === undefined) return 'whether the glaze turns soft on flexing';
  return undefined;
}

function remedyFor(facts: LineFacts, fact: DamageFact, strands: number): { remedy: Remedy; because: string } {
  const limit = facts.practice.number('cut-strands-limit', 'low');
  const worn = facts.practice.number('abrasion-retire', 'low');
  const many = `${strands} cut strands within one bury length reach the limit of ${limit}`;
  switch (fact.kind) {
    case 'cut':
      if (fact.strands === undefined && strands < limit) return { remedy: 'cut-out', because: 'how many strands are cut is not written' };
      return strands >= limit ? { remedy: 'cut-out', because: many } : { remedy: 'derate', because: 'a single cut strand lowers the strength there' };
    case 'pulled':
      return strands >= limit ? { remedy: 'cut-out', because: many } : { remedy: 'clean', because: 'a pulled strand is worked back into the braid; until then it is counted as cut' };
    case 'abrasion':
      if (fact.share !== undefined) return fact.share.value >= worn * (1 - 1e-9) ? { remedy: 'cut-out', because: 'the share of strand volume that is gone reaches the limit' } : { remedy: 'derate', because: 'worn strands lower the strength there' };
      if (fact.severity === 'light') return { remedy: 'derate', because: 'worn strands lower the strength there' };
      if (fact.severity === 'moderate') return { remedy: 'derate', because: 'worn strands lower the strength there' };
      if (fact.severity === 'heavy') return { remedy: 'cut-out', because: 'a quarter or more of the strand volume may be gone' };
      return { remedy: 'cut-out', because: 'how much of the strand volume is gone is not written' };
    case 'glaze':
      return fact.state === 'soft' ? { remedy: 'derate', because: 'glazed fibre that turns soft on flexing is counted like light wear' } : { remedy: 'cut-out', because: fact.state === 'hard' ? 'glazed fibre that stays hard has been melted together' : 'whether the glaze turns soft on flexing is not written' };
    case 'melt':
      return { remedy: 'cut-out', because: 'melted fibre does not carry' };
    case 'kink':
      return { remedy: 'cut-out', because: 'a kink that stays has moved the strands for good' };
    case 'flattened':
      return { remedy: 'clean', because: 'flattened line is worked round again' };
    case 'brittle':
      return { remedy: 'retire', because: 'discoloured and brittle fibre is not damaged in one place only' };
    default:
      return { remedy: 'retire', because: 'what a stain has done to the fibre cannot be seen' };
  }
}

const countValue = (n: number, place: Place): Given => ({ amount: exactly(n), kind: 'count', origin: { from: 'written', place } });

/** Strength where damage lies, all damage of its zone counted together. */
function strengthAt(facts: LineFacts, own: DamageFact, zone: readonly DamageFact[], strands: number, worn: DamagedPiece['worn']): Value {
  const order = [own, ...zone.filter((f) => f !== own)];
  for (const fact of order) {
    const says = notMeasured(fact);
    if (says !== undefined) return unknown({ key: `damage ${fact.place.start} of ${facts.name}`, says, help: 'cut it out, or write the share of strand volume that is gone where it can be measured', place: fact.place, reported: true });
  }
  let wear: Value | undefined;
  for (const fact of order) {
    const share = worn.get(fact);
    if (share !== undefined && (wear === undefined || (!isUnknown(share) && !isUnknown(wear) && share.amount.high > wear.amount.high))) wear = share;
  }
  const F_b = facts.base;
  if (!isUnknown(facts.strands) && strands > facts.strands.amount.low) return unknown({ key: `damage ${own.place.start} of ${facts.name}`, says: `as many strands are cut as \`${facts.name}\` has`, help: 'cut it out', place: own.place, reported: true });
  const n = countValue(strands, own.place);
  if (strands > 0 && wear !== undefined) return asGiven(strengthAfterLosses({ F_b, s_1: asGiven(cutStrandShare({ n, N: facts.strands })), s_2: wear }));
  if (strands > 0) return asGiven(strengthAfterCutStrands({ F_b, n, N: facts.strands }));
  if (wear !== undefined) return asGiven(strengthAfterAbrasion({ F_b, a: wear }));
  return F_b;
}

function notMeasured(fact: DamageFact): string | undefined {
  const words = damageWords(fact);
  if (fact.kind === 'cut' || fact.kind === 'pulled') return fact.strands === undefined ? `how many strands are ${fact.kind} is not written` : undefined;
  if (fact.kind === 'abrasion') return fact.share !== undefined || fact.severity === 'light' || fact.severity === 'moderate' ? undefined : `how much strength ${words} leaves is not measured`;
  if (fact.kind === 'glaze') return fact.state === 'soft' ? undefined : `how much strength ${words} leaves is not measured`;
  return ['melt', 'brittle', 'stain', 'kink', 'unknown'].includes(fact.kind) ? `how much strength ${words} leaves is not measured` : undefined;
}

function wornShare(facts: LineFacts, fact: DamageFact): Value | undefined {
  if (fact.kind === 'abrasion') return fact.share !== undefined ? writtenValue(fact.share, 'needed share') : facts.practice.value('abrasion-share', fact.severity);
  if (fact.kind === 'glaze' && fact.state === 'soft') return facts.practice.value('abrasion-share', 'light');
  return undefined;
}
