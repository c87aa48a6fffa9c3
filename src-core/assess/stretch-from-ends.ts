import { isAbove, isBelow } from '../base/compare.ts';
import { between, type Amount } from '../units/amount.ts';

/** A stretch of a piece in one of the two ways its splices may have come out: finished distances from the inboard end, and the length of the piece (m). */
export interface LaidStretch {
  readonly from: number;
  readonly to: number;
  readonly total: number;
}

interface Stretch {
  readonly from: Amount;
  readonly to: Amount;
}

/** A stretch as it is measured from each end of its piece: the length between the two is known between two figures only. */
export interface StretchFromEnds {
  readonly inboard: Stretch;
  readonly outboard: Stretch;
}

export const fromEnds = (long: LaidStretch, short: LaidStretch): StretchFromEnds => ({
  inboard: { from: between(long.from, short.from), to: between(long.to, short.to) },
  outboard: { from: between(long.total - long.to, short.total - short.to), to: between(long.total - long.from, short.total - short.from) },
});

/** A place is sharper from the end it was measured from than from the other, and a line may be turned: what either end sees counts. */
const seenFromEither = (one: StretchFromEnds, other: StretchFromEnds, reaches: (to: number, from: number) => boolean): boolean =>
  [[one.inboard, other.inboard] as const, [one.outboard, other.outboard] as const].some(([a, b]) => reaches(a.to.high, b.from.low) && reaches(b.to.high, a.from.low));

/** True where two stretches of a piece may share some line. */
export const mayOverlap = (one: StretchFromEnds, other: StretchFromEnds): boolean => seenFromEither(one, other, isAbove);

/** The same, and where they may lie end to end: a tape does not tell on which side of the border damage came to lie. */
export const mayTouch = (one: StretchFromEnds, other: StretchFromEnds): boolean => seenFromEither(one, other, (to, from) => !isBelow(to, from));
