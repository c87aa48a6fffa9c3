import { isAbove, isBelow, isNear } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { wordOf, type BoundStatement } from './bound.ts';
import { printDay, type DayNumber } from './day.ts';
import { bareEnd, finishedAt, finishedLength, lengthOf, turned, type EndFacts, type Joint, type Lost, type Mark, type PieceState, type Scenario } from './line-state.ts';

const placeless = (m: Mark): Mark => ({ ...m, from: undefined, to: undefined });

/** Everything of a piece that lies nobody can tell where. */
const allPlaceless = (piece: PieceState): Pick<PieceState, 'marks' | 'buried' | 'joints'> => ({ marks: piece.marks.map(placeless), buried: [], joints: piece.joints.map((j) => ({ ...j, at: undefined })) });

/** Joints of which a cut does not tell on which side they come to lie. */
function inDoubt(piece: PieceState, isLost: (joint: Joint) => boolean, place: Place, day: DayNumber | undefined): PieceState {
  if (!piece.joints.some(isLost)) return piece;
  const doubt: Lost = { says: `on which side of ${day === undefined ? 'this cut' : `the cut of ${printDay(day)}`} the joint in \`${piece.name}\` lies is not known`, help: piece.lost?.help ?? 'measure where it lies, and write a line of its own for each piece', place, reported: false };
  return { ...piece, joints: piece.joints.map((j) => (isLost(j) ? { ...j, doubt: j.doubt ?? doubt } : j)) };
}

/** Damage of which nobody sees how far it goes: no cut takes it out, and every piece of the line has it. */
const isEverywhere = ({ fact: { kind } }: Mark): boolean => kind === 'brittle' || kind === 'stain';

/** True for a cut that drops the end at the drum: what lies outboard of it goes on under the name of the piece. */
export const dropsInboard = ({ values }: BoundStatement): boolean => wordOf(values, 'drop') === 'inboard';

/** What is left inboard of a cut at `s`, and what lies outboard of it. */
export function cutPiece(whole: PieceState, s: number, place: Place, day: DayNumber | undefined): { inboard: PieceState; outboard: PieceState } {
  const piece = inDoubt(whole, (j) => j.at === undefined, place, day);
  const marksBelow: Mark[] = [];
  const marksAbove: Mark[] = [];
  for (const m of piece.marks) {
    // Damage whose place is unknown may lie on either side: it stays with both.
    if (m.from === undefined || m.to === undefined) {
      marksBelow.push(m);
      marksAbove.push(placeless(m));
      continue;
    }
    // So does damage right at the cut: a tape does not tell on which side of the knife it came to lie.
    if (isEverywhere(m)) {
      marksBelow.push(isAbove(m.to, s) ? placeless(m) : m);
      marksAbove.push(isBelow(m.from, s) ? placeless(m) : { ...m, from: m.from - s, to: m.to - s });
      continue;
    }
    const atCut = isNear(m.from, s) && isNear(m.to, s);
    if (atCut || isBelow(m.from, s)) marksBelow.push({ ...m, from: Math.min(m.from, s), to: Math.min(m.to, s) });
    if (atCut || isAbove(m.to, s)) marksAbove.push({ ...m, from: Math.max(m.from, s) - s, to: Math.max(m.to, s) - s });
  }
  // Either side may have a joint whose place is unknown.
  const joints = (isThere: (at: number) => boolean): Joint[] => piece.joints.filter((j) => j.at === undefined || isThere(j.at));
  return {
    inboard: {
      ...piece,
      axis: s,
      lost: undefined,
      outboard: bareEnd(place, day),
      marks: marksBelow,
      buried: piece.buried.filter((b) => isBelow(b.from, s)).map((b) => ({ ...b, to: Math.min(b.to, s) })),
      joints: joints((at) => isBelow(at, s)),
    },
    outboard: {
      ...piece,
      axis: piece.axis === undefined ? undefined : piece.axis - s,
      inboard: bareEnd(place, day),
      marks: marksAbove,
      buried: piece.buried.filter((b) => isAbove(b.to, s)).map((b) => ({ ...b, from: Math.max(b.from, s) - s, to: b.to - s })),
      joints: joints((at) => isAbove(at, s)).map((j) => ({ ...j, at: j.at === undefined ? undefined : j.at - s })),
    },
  };
}

/** The same where only the distance from the outboard end is known, for the length of the piece is not. */
export function cutFromOutboard(whole: PieceState, distance: number, place: Place, day: DayNumber | undefined): { inboard: PieceState; outboard: PieceState } {
  const piece = inDoubt(whole, () => true, place, day);
  return {
    inboard: { ...piece, outboard: bareEnd(place, day) },
    outboard: { ...piece, ...allPlaceless(piece), axis: distance, lost: undefined, inboard: bareEnd(place, day) },
  };
}

/** Finished length of line that an end's eye and buried tail take up. */
function endReach(end: EndFacts, diameter_m: number | undefined, scenario: Scenario): { whole: number; eye: number } | undefined {
  const bury = lengthOf(end.bury, diameter_m);
  const loop = eyeLoop(end, diameter_m, scenario);
  return !isBuried(end) || bury === undefined || loop === undefined ? undefined : { whole: loop / 2 + bury, eye: loop / 2 };
}

/**
 * The piece before a cut, with what the cut goes through marked as such: of a splice that is not whole any more nobody
 * knows what it holds. `s` is where the cut lies, else `fromOutboard` its distance from the outboard end.
 */
export function markCutThrough(piece: PieceState, cut: { readonly s: number | undefined; readonly fromOutboard: number | undefined }, place: Place, diameter_m: number | undefined, scenario: Scenario): PieceState {
  const { s } = cut;
  const total = finishedLength(piece);
  const x = s === undefined ? undefined : finishedAt(piece, s);
  const changed = new Map<EndFacts, EndFacts>();
  const atEnd = (end: EndFacts, distance: number | undefined): void => {
    const reach = distance === undefined ? undefined : endReach(end, diameter_m, scenario);
    if (reach !== undefined && isBelow(distance!, reach.whole)) changed.set(end, { ...end, cutThrough: { place, seen: isAbove(distance!, reach.eye) } });
  };
  atEnd(piece.inboard, x);
  atEnd(piece.outboard, cut.fromOutboard ?? (x === undefined || total === undefined ? undefined : total - x));
  for (const { end } of piece.joints) {
    const own = piece.buried.filter((b) => b.end === end);
    if (s !== undefined && own.some((b) => isBelow(b.from, s) && isAbove(b.to, s))) changed.set(end, { ...end, cutThrough: { place, seen: true } });
  }
  if (changed.size === 0) return piece;
  const now = (end: EndFacts): EndFacts => changed.get(end) ?? end;
  return { ...piece, inboard: now(piece.inboard), outboard: now(piece.outboard), joints: piece.joints.map((j) => ({ ...j, end: now(j.end) })), buried: piece.buried.map((b) => ({ ...b, end: now(b.end) })) };
}

/** Rope around the eye (m); none for an end without an eye. */
export function eyeLoop(end: EndFacts, diameter_m: number | undefined, scenario: Scenario): number | undefined {
  if (end.form !== 'eye') return 0;
  if (end.size !== undefined) return lengthOf(end.size, diameter_m);
  return diameter_m === undefined ? undefined : scenario.eyeLoop_d * diameter_m;
}

function whyLost(end: EndFacts, bury: number | undefined): Lost {
  if (end.form === 'knot') return { says: 'how much line this knot takes is not known', help: 'cut the knot off and splice an eye', place: end.place, reported: false };
  if (end.form === 'hook' && end.bury === undefined) return { says: 'how this hook is fixed is not given, so the rope that it takes is not known', help: 'add its `bury`', place: end.place, reported: end.broken };
  const diameterMissing = end.bury?.inDiameters === true && bury === undefined;
  if (diameterMissing || end.bury !== undefined) return { says: 'the diameter of the line is not given, so the rope that this splice takes is not known', help: 'add `diameter` from the tag or the spool', place: end.place, reported: false };
  return { says: 'the bury of this splice is not given, so the rope that it takes is not known', help: 'add `bury` with the length of tail inside the line', place: end.place, reported: end.broken };
}

/** True for an end whose tail is buried in the line. */
export const isBuried = (end: EndFacts): boolean => end.form === 'eye' || (end.form === 'hook' && end.bury !== undefined);

/** Ends that are made of the line itself and take an amount of it that nobody wrote. */
const takesUnknown = (end: EndFacts): boolean => end.form === 'knot' || (end.form === 'hook' && end.bury === undefined);

/**
 * Where a point of the old line comes to lie when its end is spliced, both as distances: `u` from the cut end, the
 * answer from the new bearing point. The eye folds back on itself, and the tail beyond it lies inside the standing part.
 */
const folded = (u: number, bury: number, loop: number, contraction: number): number =>
  u >= bury + loop ? u - bury - loop / 2 : u >= bury ? loop / 2 - Math.min(u - bury, bury + loop - u) : loop / 2 + (bury - u) / (1 - contraction);

/** The same for a stretch. */
function foldedStretch([near, far]: readonly [number, number], bury: number, loop: number, contraction: number): readonly [number, number] {
  const turns = [bury, bury + loop / 2, bury + loop].filter((u) => near < u && u < far);
  const moved = [near, far, ...turns].map((u) => folded(u, bury, loop, contraction));
  return [Math.min(...moved), Math.max(...moved)];
}

/**
 * The piece with a new outboard end. The tail leaves the axis and lies inside the standing part; the bearing point of
 * the eye is the new end. Undefined when the piece is too short for it.
 */
function spliceOutboard(piece: PieceState, end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  if (!isBuried(end) && !takesUnknown(end)) return { ...piece, outboard: end };
  const bury = isBuried(end) ? lengthOf(end.bury, diameter_m) : undefined;
  const loop = eyeLoop(end, diameter_m, scenario);
  const { axis } = piece;
  if (bury === undefined || loop === undefined || axis === undefined) {
    // What is folded back reaches no farther than the middle, or by a known length; nobody knows what it took along.
    const most = bury === undefined || loop === undefined ? undefined : bury + loop + bury / (1 - scenario.contraction);
    const marks = piece.marks.map((m) => {
      if (m.from === undefined || m.to === undefined || (axis !== undefined && m.to <= axis / 2)) return m;
      return axis !== undefined || most === undefined ? placeless(m) : { ...m, from: Math.max(0, m.from - most) };
    });
    return { ...piece, axis: undefined, lost: piece.lost ?? whyLost(end, bury), marks, outboard: end };
  }
  const cover = bury / (1 - scenario.contraction);
  const throat = axis - bury - loop;
  if (isBelow(throat - cover, 0)) return undefined;
  const bearing = throat + loop / 2;
  return {
    ...piece,
    axis: bearing,
    outboard: end,
    buried: [...piece.buried, { from: throat - cover, to: throat, contraction: scenario.contraction, end }],
    marks: piece.marks.map((m) => {
      if (m.from === undefined || m.to === undefined || m.to <= throat) return m;
      const [near, far] = foldedStretch([axis - m.to, axis - m.from], bury, loop, scenario.contraction);
      return { ...m, from: m.from <= throat - cover ? m.from : bearing - far, to: bearing - near };
    }),
  };
}

/** The same at the inboard end of a piece whose length is not known: everything on it is counted from that very end. */
function spliceInboardOfUnknown(piece: PieceState, end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState {
  if (!isBuried(end) && !takesUnknown(end)) return { ...piece, inboard: end };
  const bury = isBuried(end) ? lengthOf(end.bury, diameter_m) : undefined;
  const loop = eyeLoop(end, diameter_m, scenario);
  if (bury === undefined || loop === undefined) return { ...piece, ...allPlaceless(piece), lost: piece.lost ?? whyLost(end, bury), inboard: end };
  const { contraction } = scenario;
  const gone = bury + loop / 2;
  return {
    ...piece,
    inboard: end,
    buried: [{ from: loop / 2, to: loop / 2 + bury / (1 - contraction), contraction, end }, ...piece.buried.map((b) => ({ ...b, from: b.from - gone, to: b.to - gone }))],
    joints: piece.joints.map((j) => ({ ...j, at: j.at === undefined ? undefined : j.at - gone })),
    marks: piece.marks.map((m) => {
      if (m.from === undefined || m.to === undefined) return m;
      const [from, to] = foldedStretch([m.from, m.to], bury, loop, contraction);
      return { ...m, from, to };
    }),
  };
}

export function splicePiece(piece: PieceState, which: 'inboard' | 'outboard', end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  if (which === 'outboard') return spliceOutboard(piece, end, diameter_m, scenario);
  if (piece.axis === undefined) return spliceInboardOfUnknown(piece, end, diameter_m, scenario);
  const done = spliceOutboard(turned(piece), end, diameter_m, scenario);
  return done === undefined ? undefined : turned(done);
}

/**
 * The piece with the splice of its outboard end drawn out again: eye and tail come back. How far from the end it lay before nobody tells of
 * damage that was found in the splice, so it reaches to the end. The length is lost where nobody saw what the splice took.
 */
function drawnOutOutboard(piece: PieceState, place: Place, diameter_m: number | undefined, scenario: Scenario): PieceState {
  const { axis, outboard: old } = piece;
  const [bury, loop] = [lengthOf(old.bury, diameter_m), eyeLoop(old, diameter_m, scenario)];
  const outboard = bareEnd(place, old.day);
  const own = piece.buried.find(({ end }) => end === old);
  if (axis === undefined || own === undefined || bury === undefined || loop === undefined || old.cutThrough !== undefined) {
    const lost: Lost = { says: `how much line came out of the old splice of \`${piece.name}\` is not known`, help: 'measure the line end to end, and write it as a `line` of its own with that length', place, reported: false };
    return { ...piece, axis: undefined, noLongerThan: Infinity, lost: piece.lost ?? lost, buried: [], outboard, marks: piece.marks.map((m) => (m.to !== undefined && axis !== undefined && m.to <= axis / 2 ? m : placeless(m))) };
  }
  const end = axis + bury + loop / 2;
  return {
    ...piece,
    axis: end,
    outboard,
    buried: piece.buried.filter((b) => b !== own),
    marks: piece.marks.map((m) => (m.from === undefined || m.to === undefined || m.to <= own.from ? m : { ...m, from: Math.min(m.from, own.to), to: end })),
  };
}

export const drawnOut = (piece: PieceState, which: 'inboard' | 'outboard', place: Place, diameter_m: number | undefined, scenario: Scenario): PieceState =>
  which === 'outboard' ? drawnOutOutboard(piece, place, diameter_m, scenario) : turned(drawnOutOutboard(turned(piece), place, diameter_m, scenario));

/** Two pieces spliced end to end, each tail buried in the other. Undefined when one is too short for it. */
export function joinPieces(a: PieceState, b: PieceState, end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  const bury = lengthOf(end.bury, diameter_m);
  const { contraction } = scenario;
  const cover = bury === undefined ? undefined : bury / (1 - contraction);
  if (bury !== undefined && cover !== undefined) for (const { axis } of [a, b]) if (axis !== undefined && isBelow(axis - bury - cover, 0)) return undefined;
  const rest = {
    ...a,
    outboard: b.outboard,
    log: [...a.log, ...b.log].sort((x, y) => x.day - y.day),
    // What was said of either holds for the whole: a retired piece does not come back by being joined on.
    retired: a.retired ?? b.retired,
    incomplete: a.incomplete ?? b.incomplete,
  };
  // A joint that a cut left in doubt may come back from both sides of it.
  const isInBoth = ({ end: { statement } }: Joint): boolean => b.joints.some((other) => other.end.statement === statement);
  const ownJoints = a.joints.map((j) => (isInBoth(j) ? { ...j, at: undefined } : j));
  const otherJoints = b.joints.filter(({ end: { statement } }) => a.joints.every((own) => own.end.statement !== statement));
  const throat = bury === undefined || a.axis === undefined ? undefined : a.axis - bury;
  const mapped = (m: Mark, move: (s: number) => number): Mark => {
    if (m.from === undefined || m.to === undefined) return m;
    const [x, y] = [move(m.from), move(m.to)];
    return { ...m, from: Math.min(x, y), to: Math.max(x, y) };
  };
  if (bury === undefined || cover === undefined || throat === undefined) {
    // The tail of the inboard piece stretches out over the other's: by a known length, or by some of its outer half.
    const kept = (m: Mark): Mark => {
      if (m.from === undefined || m.to === undefined || (a.axis !== undefined && m.to <= a.axis / 2)) return m;
      return bury === undefined || cover === undefined ? placeless(m) : { ...m, to: m.to + cover - bury };
    };
    const other = allPlaceless({ ...b, joints: otherJoints });
    return { ...rest, axis: undefined, lost: a.lost ?? b.lost ?? whyLost(end, bury), joints: [...ownJoints, { at: undefined, end }, ...other.joints], marks: [...a.marks.map(kept), ...other.marks] };
  }
  const moveA = (s: number): number => (s <= throat ? s : throat + (s - throat) / (1 - contraction));
  const moveB = (s: number): number => (s >= bury ? throat + s - bury : throat - (bury - s) / (1 - contraction));
  return {
    ...rest,
    axis: b.axis === undefined ? undefined : throat + b.axis - bury,
    lost: b.axis === undefined ? (b.lost ?? whyLost(end, bury)) : undefined,
    buried: [
      ...a.buried,
      { from: throat - cover, to: throat, contraction, end },
      { from: throat, to: throat + cover, contraction, end },
      ...b.buried.map((x) => ({ ...x, from: throat + x.from - bury, to: throat + x.to - bury })),
    ],
    joints: [...ownJoints, { at: throat, end }, ...otherJoints.map((j) => ({ ...j, at: j.at === undefined ? undefined : throat + j.at - bury }))],
    marks: [...a.marks.map((m) => mapped(m, moveA)), ...b.marks.map((m) => mapped(m, moveB))],
  };
}
