import { isBelow } from '../base/compare.ts';
import { asGiven, isUnknown, unknown, type Cause, type Value } from '../mechanics/derivation.ts';
import { finishedAt, finishedLength, lengthOf, type EndFacts, type PieceState, type Scenario } from '../model/line-state.ts';
import { eyeLoop } from '../model/line-work.ts';
import { derivedFrom } from '../trade/sources.ts';
import { between } from '../units/amount.ts';
import { causeOfLost } from './facts.ts';
import type { LineFacts } from './line-facts.ts';
import type { AssessedEnd } from './splice-end.ts';
import { fromEnds, type StretchFromEnds } from './stretch-from-ends.ts';

/** Where a splice lies on its piece. */
export interface SpliceStretch {
  readonly end: AssessedEnd;
  /** Standing part with the tail in it. */
  readonly cover: StretchFromEnds;
  /** The same with the eye. */
  readonly whole: StretchFromEnds;
}

/** Plain line between two neighbouring splices; below zero where their buried tails overlap. */
export interface SpliceGap {
  readonly one: AssessedEnd;
  readonly other: AssessedEnd;
  readonly gap: Value;
}

export interface SpliceStretches {
  readonly stretches: readonly SpliceStretch[];
  /** Splices whose place cannot be told, and why. */
  readonly unplaced: readonly { readonly end: AssessedEnd; readonly cause: Cause }[];
  readonly gaps: readonly SpliceGap[];
}

interface Case {
  readonly state: PieceState;
  readonly scenario: Scenario;
}

/** A splice in one case, in finished distance from the inboard end (m). */
interface Laid {
  readonly from: number;
  readonly to: number;
  readonly wholeFrom: number;
  readonly wholeTo: number;
  /** Length of the piece. */
  readonly total: number;
}

/** One end in one case. A supplied splice was measured when it was finished, so its cover is as long as its tail. */
function laidOf({ state, scenario }: Case, which: AssessedEnd['which'], facts: EndFacts, diameter_m: number | undefined): Laid | undefined {
  const total = finishedLength(state);
  if (total === undefined) return undefined;
  if (!facts.supplied) {
    const own = state.buried.filter((b) => b.end === facts);
    if (own.length === 0) return undefined;
    const from = finishedAt(state, Math.min(...own.map((b) => b.from)));
    const to = finishedAt(state, Math.max(...own.map((b) => b.to)));
    return { from, to, wholeFrom: which === 'inboard' ? 0 : from, wholeTo: which === 'outboard' ? total : to, total };
  }
  const bury = lengthOf(facts.bury, diameter_m);
  const loop = eyeLoop(facts, diameter_m, scenario);
  if (bury === undefined || loop === undefined) return undefined;
  return which === 'inboard'
    ? { from: loop / 2, to: loop / 2 + bury, wholeFrom: 0, wholeTo: loop / 2 + bury, total }
    : { from: total - loop / 2 - bury, to: total - loop / 2, wholeFrom: total - loop / 2 - bury, wholeTo: total, total };
}

const whole = ({ wholeFrom: from, wholeTo: to, total }: Laid) => ({ from, to, total });

const replayed = derivedFrom('splices-laid-out', 'geometry: the splices laid out along the piece');

/** Every buried splice of a piece by its place, and the plain line between them. */
export function spliceStretches(long: Case, short: Case, ends: readonly AssessedEnd[], facts: LineFacts): SpliceStretches {
  const d = isUnknown(facts.diameter) ? undefined : facts.diameter.amount.low;
  const placed: { stretch: SpliceStretch; long: Laid; short: Laid }[] = [];
  const unplaced: { end: AssessedEnd; cause: Cause }[] = [];
  for (const end of ends) {
    if (end.buried === undefined) continue;
    const factsIn = (state: PieceState): EndFacts | undefined => (end.which === 'joint' ? state.joints.find((j) => j.end.statement === end.facts.statement)?.end : state[end.which]);
    const [a, b] = [long, short].map((one) => {
      const own = factsIn(one.state);
      return own === undefined ? undefined : laidOf(one, end.which, own, d);
    });
    if (a === undefined || b === undefined) unplaced.push({ end, cause: whyUnplaced(end, long.state, short.state, facts) });
    else placed.push({ long: a, short: b, stretch: { end, cover: fromEnds(a, b), whole: fromEnds(whole(a), whole(b)) } });
  }
  return { stretches: placed.map((p) => p.stretch), unplaced, gaps: gapsBetween(ends, placed, unplaced, facts) };
}

/** Plain line between two splices; below zero by what both cover, and where the one lies beyond the other, as in its eye, by the shorter of them. */
function gapIn(one: Laid, other: Laid): number {
  const apart = other.from - one.to;
  if (apart >= 0) return apart;
  const shared = Math.min(one.to, other.to) - Math.max(one.from, other.from);
  return -(shared > 0 ? shared : Math.min(one.to - one.from, other.to - other.from));
}

function gapsBetween(ends: readonly AssessedEnd[], placed: readonly { stretch: SpliceStretch; long: Laid; short: Laid }[], unplaced: readonly { end: AssessedEnd; cause: Cause }[], facts: LineFacts): SpliceGap[] {
  const buried = ends.filter((end) => end.buried !== undefined);
  return buried.slice(1).map((other, i) => {
    const one = buried[i]!;
    const why = unplaced.find((u) => u.end === one || u.end === other);
    if (why !== undefined) return { one, other, gap: unknown(why.cause) };
    const [a, b] = [one, other].map((end) => placed.find((p) => p.stretch.end === end)!);
    const inputs = [one, other].flatMap((end) => (isUnknown(end.buried!.bury) ? [] : [{ symbol: end === one ? 'T_1' : 'T_2', meaning: end === one ? 'bury of the one' : 'bury of the other', given: end.buried!.bury }]));
    if (!isUnknown(facts.length)) inputs.push({ symbol: 'L_0', meaning: 'length as fitted', given: facts.length });
    const gap = asGiven({
      calculation: 'gap-between-splices', means: 'plain line between two splices', symbol: 'g', amount: between(gapIn(a!.long, b!.long), gapIn(a!.short, b!.short)), kind: 'usable length', formula: 'g = start of the second splice − end of the first, or less what both of them cover', inputs, sources: [replayed], assumptions: [], notes: [],
    });
    return { one, other, gap };
  });
}

function whyUnplaced(end: AssessedEnd, long: PieceState, short: PieceState, facts: LineFacts): Cause {
  const bury = end.buried?.bury;
  if (bury !== undefined && isUnknown(bury)) return bury.unknown;
  const lost = long.lost ?? short.lost;
  if (lost !== undefined) return causeOfLost(lost, `length of ${long.name}`);
  if (isUnknown(facts.diameter)) return facts.diameter.unknown;
  return { key: `splices of ${long.name}`, says: `where the splices of \`${long.name}\` lie cannot be worked out`, help: 'complete its logbook', place: end.facts.place };
}

export const overlaps = (gap: SpliceGap): boolean => !isUnknown(gap.gap) && isBelow(gap.gap.amount.low, 0);
