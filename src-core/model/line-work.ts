import { isAbove, isBelow } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import type { DayNumber } from './day.ts';
import { bareEnd, lengthOf, turned, type EndFacts, type Lost, type Mark, type PieceState, type Scenario } from './line-state.ts';

/** What is left inboard of a cut at `s`, and what lies outboard of it. */
export function cutPiece(piece: PieceState, s: number, place: Place, day: DayNumber | undefined): { inboard: PieceState; outboard: PieceState } {
  const marksBelow: Mark[] = [];
  const marksAbove: Mark[] = [];
  for (const m of piece.marks) {
    // Damage whose place is unknown may lie on either side: it stays with both.
    if (m.from === undefined || m.to === undefined) {
      marksBelow.push(m);
      marksAbove.push({ ...m, from: undefined, to: undefined });
      continue;
    }
    if (isBelow(m.from, s)) marksBelow.push({ ...m, to: Math.min(m.to, s) });
    if (isAbove(m.to, s)) marksAbove.push({ ...m, from: Math.max(m.from, s) - s, to: m.to - s });
  }
  return {
    inboard: {
      ...piece,
      axis: s,
      outboard: bareEnd(place, day),
      marks: marksBelow,
      buried: piece.buried.filter((b) => isBelow(b.from, s)).map((b) => ({ ...b, to: Math.min(b.to, s) })),
      joints: piece.joints.filter((j) => isBelow(j.at, s)),
    },
    outboard: {
      ...piece,
      axis: piece.axis === undefined ? undefined : piece.axis - s,
      inboard: bareEnd(place, day),
      marks: marksAbove,
      buried: piece.buried.filter((b) => isAbove(b.to, s)).map((b) => ({ ...b, from: Math.max(b.from, s) - s, to: b.to - s })),
      joints: piece.joints.filter((j) => isAbove(j.at, s)).map((j) => ({ ...j, at: j.at - s })),
    },
  };
}

/** Rope around the eye (m); none for an end without an eye. */
export function eyeLoop(end: EndFacts, diameter_m: number | undefined, scenario: Scenario): number | undefined {
  if (end.form !== 'eye') return 0;
  if (end.size !== undefined) return lengthOf(end.size, diameter_m);
  return diameter_m === undefined ? undefined : scenario.eyeLoop_d * diameter_m;
}

function whyLost(end: EndFacts, bury: number | undefined): Lost {
  const diameterMissing = end.bury?.inDiameters === true && bury === undefined;
  if (diameterMissing || end.bury !== undefined) return { says: 'the diameter of the line is not given, so the rope that this splice takes is not known', help: 'add `diameter` from the tag or the spool', place: end.place, reported: false };
  return { says: 'the bury of this splice is not given, so the rope that it takes is not known', help: 'add `bury` with the length of tail inside the line', place: end.place, reported: end.broken };
}

/** True for an end whose tail is buried in the line. */
export const isBuried = (end: EndFacts): boolean => end.form === 'eye' || (end.form === 'hook' && end.bury !== undefined);

/**
 * The piece with a new outboard end. The tail leaves the axis and lies inside the standing part; the bearing point of
 * the eye is the new end. Undefined when the piece is too short for it.
 */
function spliceOutboard(piece: PieceState, end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  if (!isBuried(end)) return { ...piece, outboard: end };
  const bury = lengthOf(end.bury, diameter_m);
  const loop = eyeLoop(end, diameter_m, scenario);
  if (bury === undefined || loop === undefined || piece.axis === undefined) {
    return { ...piece, axis: undefined, lost: piece.lost ?? whyLost(end, bury), outboard: end };
  }
  const cover = bury / (1 - scenario.contraction);
  const tail = piece.axis - bury;
  const throat = tail - loop;
  if (isBelow(throat - cover, 0)) return undefined;
  const move = (s: number): number => (s <= throat ? s : s <= tail ? throat + Math.min(s - throat, tail - s) : throat - (s - tail) / (1 - scenario.contraction));
  return {
    ...piece,
    axis: throat + loop / 2,
    outboard: end,
    buried: [...piece.buried, { from: throat - cover, to: throat, contraction: scenario.contraction, end }],
    marks: piece.marks.map((m) => {
      if (m.from === undefined || m.to === undefined || m.to <= throat) return m;
      const moved = [move(m.from), move(m.to), ...(m.from < throat && m.to > throat ? [throat] : []), ...(m.from < tail && m.to > tail ? [throat] : [])];
      return { ...m, from: Math.min(...moved), to: Math.max(...moved) };
    }),
  };
}

export function splicePiece(piece: PieceState, which: 'inboard' | 'outboard', end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  if (which === 'outboard') return spliceOutboard(piece, end, diameter_m, scenario);
  if (piece.axis === undefined) return { ...piece, inboard: end };
  const done = spliceOutboard(turned(piece), end, diameter_m, scenario);
  return done === undefined ? undefined : turned(done);
}

/** Two pieces spliced end to end, each tail buried in the other. Undefined when one is too short for it. */
export function joinPieces(a: PieceState, b: PieceState, end: EndFacts, diameter_m: number | undefined, scenario: Scenario): PieceState | undefined {
  const bury = lengthOf(end.bury, diameter_m);
  const rest = { ...a, outboard: b.outboard, log: [...a.log, ...b.log].sort((x, y) => x.day - y.day) };
  if (bury === undefined || a.axis === undefined || b.axis === undefined) return { ...rest, axis: undefined, lost: a.lost ?? b.lost ?? whyLost(end, bury), marks: [...a.marks, ...b.marks.map((m) => ({ ...m, from: undefined, to: undefined }))] };
  const cover = bury / (1 - scenario.contraction);
  const throat = a.axis - bury;
  if (isBelow(throat - cover, 0) || isBelow(b.axis - bury - cover, 0)) return undefined;
  const moveA = (s: number): number => (s <= throat ? s : throat + (s - throat) / (1 - scenario.contraction));
  const moveB = (s: number): number => (s >= bury ? throat + s - bury : throat - (bury - s) / (1 - scenario.contraction));
  const mapped = (m: Mark, move: (s: number) => number): Mark => {
    if (m.from === undefined || m.to === undefined) return m;
    const [x, y] = [move(m.from), move(m.to)];
    return { ...m, from: Math.min(x, y), to: Math.max(x, y) };
  };
  return {
    ...rest,
    axis: throat + b.axis - bury,
    buried: [
      ...a.buried,
      { from: throat - cover, to: throat, contraction: scenario.contraction, end },
      { from: throat, to: throat + cover, contraction: scenario.contraction, end },
      ...b.buried.map((x) => ({ ...x, from: throat + x.from - bury, to: throat + x.to - bury })),
    ],
    joints: [...a.joints, { at: throat, end }, ...b.joints.map((j) => ({ ...j, at: throat + j.at - bury }))],
    marks: [...a.marks.map((m) => mapped(m, moveA)), ...b.marks.map((m) => mapped(m, moveB))],
  };
}
