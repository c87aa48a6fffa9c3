import type { BoundStatement } from '../model/bound.ts';
import { finishedAt, finishedLength, type DamageFact, type Mark, type PieceState } from '../model/line-state.ts';
import { between, type Amount } from '../units/amount.ts';
import { fromEnds, type LaidStretch, type StretchFromEnds } from './stretch-from-ends.ts';

/** A stretch in finished distance from the inboard end, as the piece lies in one case. */
interface Finished {
  readonly from: number | undefined;
  readonly to: number | undefined;
  /** Length of the piece. */
  readonly total: number | undefined;
}

/** One mark in both cases; a cut may have taken it off in one of them only. */
export interface PlacedMark {
  readonly fact: DamageFact;
  readonly long: Finished | undefined;
  readonly short: Finished | undefined;
}

/** The marks of a piece, each in both cases. */
export function marksOf(long: PieceState, short: PieceState): PlacedMark[] {
  const finished = (state: PieceState, { from, to }: Mark): Finished => ({ from: from === undefined ? undefined : finishedAt(state, from), to: to === undefined ? undefined : finishedAt(state, to), total: finishedLength(state) });
  // A stretch that a cut divided may be in one piece twice, once its parts are joined.
  const rest = new Map<BoundStatement, Mark[]>();
  for (const mark of short.marks) rest.set(mark.fact.statement, [...(rest.get(mark.fact.statement) ?? []), mark]);
  const both = long.marks.map((mark): PlacedMark => {
    const twin = rest.get(mark.fact.statement)?.shift();
    return { fact: mark.fact, long: finished(long, mark), short: twin === undefined ? undefined : finished(short, twin) };
  });
  return [...both, ...[...rest.values()].flat().map((mark): PlacedMark => ({ fact: mark.fact, long: undefined, short: finished(short, mark) }))];
}

export const placeOf = ({ long, short }: PlacedMark, key: 'from' | 'to'): Amount | undefined => around((long ?? short)![key], (short ?? long)![key]);

const isLaid = (stretch: Finished): stretch is LaidStretch => stretch.from !== undefined && stretch.to !== undefined && stretch.total !== undefined;

export function stretchOf(mark: PlacedMark): StretchFromEnds | undefined {
  const [long, short] = [(mark.long ?? mark.short)!, (mark.short ?? mark.long)!];
  return isLaid(long) && isLaid(short) ? fromEnds(long, short) : undefined;
}

/** Line between two marks, the least that it may be: none where the one is ahead in one case and behind in the other. */
function gap(a: PlacedMark, b: PlacedMark): number {
  let [ahead, behind] = [Infinity, Infinity];
  for (const [x, y] of [[a.long, b.long], [a.short, b.short]] as const) {
    if (x === undefined || y === undefined) continue;
    if (x.from === undefined || x.to === undefined || y.from === undefined || y.to === undefined) return 0;
    ahead = Math.min(ahead, y.from - x.to);
    behind = Math.min(behind, x.from - y.to);
  }
  return Math.max(0, ahead, behind);
}

/** The least and the most inboard and outboard that a mark may lie; everywhere where nobody knows. */
function reachOf({ long, short }: PlacedMark): readonly [from: number, to: number] {
  const places = [long, short].flatMap((s) => (s === undefined ? [] : [s.from ?? NaN, s.to ?? NaN]));
  return places.some(Number.isNaN) ? [-Infinity, Infinity] : [Math.min(...places), Math.max(...places)];
}

/** For each mark those that count as one place with it, itself among them, in their own order. */
export function marksBeside(marks: readonly PlacedMark[], most: number): (i: number) => number[] {
  const reach = marks.map(reachOf);
  // Of a long logbook most marks are far from each other whichever way they are measured: only a window is looked at.
  const order = marks.map((_, i) => i).sort((a, b) => (reach[a]![0] < reach[b]![0] ? -1 : reach[a]![0] > reach[b]![0] ? 1 : 0));
  const widest = Math.max(0, ...reach.map(([from, to]) => to - from));
  return (i) => {
    const [from, to] = reach[i]!;
    let [low, high] = [0, order.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (reach[order[middle]!]![0] < from - most - widest) low = middle + 1;
      else high = middle;
    }
    const found: number[] = [];
    for (let at = low; at < order.length; at++) {
      const j = order[at]!;
      if (reach[j]![0] > to + most) break;
      if (j === i || gap(marks[i]!, marks[j]!) <= most) found.push(j);
    }
    return found.sort((a, b) => a - b);
  };
}

export const around = (a: number | undefined, b: number | undefined): Amount | undefined => (a === undefined || b === undefined ? undefined : between(a, b));
