import type { AssessedPiece } from '../assess/assess-line.ts';
import type { AssessedEnd } from '../assess/splice-end.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';

/** A stretch of a piece that holds the same all along. */
export interface StrengthStretch {
  /** Finished distance from the inboard end (m). */
  readonly from: number;
  readonly to: number;
  /** The careful end (N); undefined where it is not known. */
  readonly strength: number | undefined;
}

/** Finished stretch of the line that lies over a buried tail, counted from the end it belongs to (m). */
export function coverOf(end: AssessedEnd): { readonly throat: number; readonly tip: number } | undefined {
  const buried = end.buried;
  if (buried === undefined || isUnknown(buried.bury)) return undefined;
  const throat = isUnknown(buried.eyeLoop) ? 0 : buried.eyeLoop.amount.high / 2;
  return { throat, tip: throat + buried.bury.amount.high };
}

/** Finished distance of each joint from the inboard end (m), where it can be told. */
export function jointStations(piece: AssessedPiece): (number | undefined)[] {
  return piece.long.joints.map(({ at }) => {
    if (at === undefined) return undefined;
    let shortened = 0;
    for (const b of piece.long.buried) shortened += Math.max(0, Math.min(at, b.to) - Math.max(0, b.from)) * b.contraction;
    return at - shortened;
  });
}

/** Strength along a piece, in steps no finer than `grain` (m): two hundred entries cost as much as two. */
export function strengthAlong(piece: AssessedPiece, length: number, isLength: boolean, grain: number): StrengthStretch[] {
  const count = Math.max(1, Math.ceil(length / grain));
  const base = isUnknown(piece.line.base) ? NaN : piece.line.base.amount.low;
  // NaN is what is not known here: it survives every comparison made below.
  const columns = new Float64Array(count).fill(base);
  const lower = (from: number, to: number, strength: Value): void => {
    const first = Math.max(0, Math.min(count - 1, Math.floor(from / grain)));
    const last = Math.max(first, Math.min(count - 1, Math.ceil(to / grain) - 1));
    const least = isUnknown(strength) ? NaN : strength.amount.low;
    for (let i = first; i <= last; i++) columns[i] = Number.isNaN(columns[i]!) || Number.isNaN(least) ? NaN : Math.min(columns[i]!, least);
  };
  const half = grain * 2;
  for (const damage of piece.damages) {
    // Damage whose place is not known may lie anywhere: it counts all along.
    if (damage.from === undefined || damage.to === undefined) lower(0, length, damage.strength);
    else lower(damage.from.low - half, damage.to.high + half, damage.strength);
  }
  for (const heat of piece.heats) {
    if (!isUnknown(heat.strength)) continue;
    if (heat.from === undefined || heat.to === undefined) lower(0, length, heat.strength);
    else lower(heat.from.low - half, heat.to.high + half, heat.strength);
  }
  if (piece.incomplete !== undefined) columns.fill(NaN);
  const inboard = coverOf(piece.inboard);
  if (inboard !== undefined) lower(0, inboard.tip, piece.inboard.strength);
  const outboard = coverOf(piece.outboard);
  if (!isLength) columns[count - 1] = NaN;
  else if (outboard !== undefined) lower(length - outboard.tip, length, piece.outboard.strength);
  else lower(length - half * 2, length, piece.outboard.strength);
  for (const [i, at] of jointStations(piece).entries()) {
    const joint = piece.joints[i];
    if (joint === undefined) continue;
    if (at === undefined) {
      lower(0, length, joint.strength);
      continue;
    }
    const bury = joint.buried === undefined || isUnknown(joint.buried.bury) ? half : joint.buried.bury.amount.high;
    lower(at - bury, at + bury, joint.strength);
  }
  const stretches: StrengthStretch[] = [];
  let start = 0;
  for (let i = 1; i <= count; i++) {
    if (i < count && Object.is(columns[i], columns[start])) continue;
    const strength = columns[start]!;
    stretches.push({ from: start * grain, to: i === count ? length : i * grain, strength: Number.isNaN(strength) ? undefined : strength });
    start = i;
  }
  return stretches;
}
