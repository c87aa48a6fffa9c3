import type { Place } from '../base/span.ts';
import { hasFlag, quantityOf, textOf, wordOf, type BoundQuantity, type BoundStatement, type Problem } from './bound.ts';
import type { DayNumber } from './day.ts';
import type { ReadonlyValues } from './values.ts';

/**
 * One way the unmeasured parts of splices may have come out. A line's state is worked out for the way that leaves the
 * most line and for the way that leaves the least; what really lies on the drum is between the two.
 */
export interface Scenario {
  /** Share by which the standing part shortens over a buried tail. */
  readonly contraction: number;
  /** Rope around an eye whose size is not written, in line diameters. */
  readonly eyeLoop_d: number;
}

/** How an end is made. Values stay as written; diameters are resolved by `lengthOf`. */
export interface EndFacts {
  readonly form: string;
  readonly thimble: string | undefined;
  readonly bury: BoundQuantity | undefined;
  readonly taper: BoundQuantity | undefined;
  readonly size: BoundQuantity | undefined;
  /** What it breaks at, by its maker or a test. */
  readonly holds: BoundQuantity | undefined;
  readonly locked: boolean;
  readonly stitched: boolean;
  readonly tucked: boolean;
  readonly temporary: boolean;
  /** Made by the maker or before the logbook began: its rope is not counted in the line's length. */
  readonly supplied: boolean;
  /** Undefined for a supplied end and for a repair that is still a plan. */
  readonly day: DayNumber | undefined;
  readonly place: Place;
  readonly statement: BoundStatement | undefined;
  readonly broken: boolean;
  /** A later cut went through this splice; `seen` when it met the buried tail, which has a finding of its own. */
  readonly cutThrough?: { readonly place: Place; readonly seen: boolean };
}

/** Damage, or heat the line was seen to take: both stay with the fibre. */
export interface DamageFact {
  readonly statement: BoundStatement;
  readonly kind: string;
  readonly strands: number | undefined;
  readonly share: BoundQuantity | undefined;
  readonly severity: string | undefined;
  readonly state: string | undefined;
  readonly place: Place;
  readonly day: DayNumber;
}

/** Damage on the piece's axis; undefined where the position cannot be worked out. */
export interface Mark {
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly fact: DamageFact;
}

/** Standing part over a buried tail. `supplied` ends do not shorten the axis any more. */
export interface BuriedStretch {
  readonly from: number;
  readonly to: number;
  readonly contraction: number;
  readonly end: EndFacts;
}

export interface Joint {
  /** Undefined where the position cannot be worked out; the joint is in the piece all the same. */
  readonly at: number | undefined;
  readonly end: EndFacts;
  /** Set where a cut left it in this piece or in another one, or went through it: which of the three nobody knows. */
  readonly doubt?: Lost | undefined;
}

/** Why the length of a piece, and with it positions on it, cannot be told. */
export interface Lost {
  readonly says: string;
  readonly help: string;
  readonly place: Place;
  /** A problem stands at the place already. */
  readonly reported: boolean;
}

export interface LogEntry {
  readonly day: DayNumber;
  readonly statement: BoundStatement;
}

/**
 * A piece of line. Its axis runs from the bearing point of its inboard end to that of its outboard end, in rope as it
 * lay before any tail was buried in it (m).
 */
export interface PieceState {
  readonly name: string;
  readonly named: Place;
  readonly axis: number | undefined;
  /** Set when the axis is undefined. */
  readonly lost: Lost | undefined;
  /** Length before the entry that left it unknown (m): no entry makes a line longer. */
  readonly noLongerThan?: number | undefined;
  /** An entry that may concern this piece could not be read: what it says is not in this state. */
  readonly incomplete: Lost | undefined;
  readonly buried: readonly BuriedStretch[];
  readonly joints: readonly Joint[];
  readonly marks: readonly Mark[];
  readonly inboard: EndFacts;
  readonly outboard: EndFacts;
  readonly log: readonly LogEntry[];
  readonly retired: LogEntry | undefined;
}

/** A piece as it was when an entry says that it was pulled. */
export interface PulledPiece {
  readonly statement: BoundStatement;
  readonly piece: PieceState;
}

export interface LineState {
  /** Nominal diameter (m). */
  readonly diameter: number | undefined;
  readonly pieces: ReadonlyMap<string, PieceState>;
  readonly pulls: readonly PulledPiece[];
  readonly problems: readonly Problem[];
}

/** Metres of a written length; diameters need the line's diameter. */
export const lengthOf = (written: BoundQuantity | undefined, diameter_m: number | undefined): number | undefined =>
  written === undefined ? undefined : written.inDiameters !== true ? written.value : diameter_m === undefined ? undefined : written.value * diameter_m;

export function endFacts(values: ReadonlyValues, statement: BoundStatement, more: { supplied: boolean; day: DayNumber | undefined }): EndFacts {
  return {
    form: wordOf(values, 'form') ?? 'unknown',
    thimble: wordOf(values, 'thimble'),
    bury: quantityOf(values, 'bury'),
    taper: quantityOf(values, 'taper'),
    size: quantityOf(values, 'size'),
    holds: quantityOf(values, 'holds'),
    locked: hasFlag(values, 'locked'),
    stitched: hasFlag(values, 'stitched'),
    tucked: hasFlag(values, 'tucked'),
    temporary: hasFlag(values, 'temporary'),
    supplied: more.supplied,
    day: more.day,
    place: statement.place,
    statement,
    broken: statement.broken.size > 0,
  };
}

export const bareEnd = (place: Place, day: DayNumber | undefined, form = 'bare'): EndFacts => ({
  form, thimble: undefined, bury: undefined, taper: undefined, size: undefined, holds: undefined, locked: false, stitched: false, tucked: false, temporary: false, supplied: false, day, place, statement: undefined, broken: false,
});

/** Finished distance from the inboard end of a point of the axis (m). */
export function finishedAt(piece: PieceState, s: number): number {
  let shortened = 0;
  for (const b of piece.buried) shortened += Math.max(0, Math.min(s, b.to) - Math.max(0, b.from)) * b.contraction;
  return s - shortened;
}

export const finishedLength = (piece: PieceState): number | undefined => (piece.axis === undefined ? undefined : finishedAt(piece, piece.axis));

/** Point of the axis at a finished distance from the inboard end (m). */
export function axisAt(piece: PieceState, finished: number): number {
  let s = 0;
  let left = finished;
  for (const b of [...piece.buried].sort((x, y) => x.from - y.from)) {
    if (b.contraction === 0) continue;
    const plain = Math.max(0, b.from - s);
    if (left <= plain) return s + left;
    left -= plain;
    s = Math.max(s, b.from);
    const rope = Math.max(0, b.to - s);
    const laid = rope * (1 - b.contraction);
    if (left <= laid) return s + left / (1 - b.contraction);
    left -= laid;
    s = Math.max(s, b.to);
  }
  return s + left;
}

/** End for end: what was inboard is outboard. Positions on an axis of unknown length are lost. */
export function turned(piece: PieceState): PieceState {
  const { axis } = piece;
  const flip = (s: number | undefined): number | undefined => (s === undefined || axis === undefined ? undefined : axis - s);
  return {
    ...piece,
    inboard: piece.outboard,
    outboard: piece.inboard,
    // A splice without a place is still an end or a joint of the piece; only its stretch cannot be laid out.
    buried: axis === undefined ? [] : piece.buried.map((b) => ({ ...b, from: axis - b.to, to: axis - b.from })).reverse(),
    joints: piece.joints.map((j) => ({ ...j, at: flip(j.at) })).reverse(),
    marks: piece.marks.map((m) => ({ ...m, from: flip(m.to), to: flip(m.from) })),
  };
}

/** The entries of a piece since its maker passed it, by somebody's name: what a pull before that did to it is settled. */
export function sincePassed(log: readonly LogEntry[]): readonly LogEntry[] {
  const passed = log.findLastIndex(({ statement }) => statement.definition.head === 'inspected' && hasFlag(statement.values, 'passed') && textOf(statement.values, 'note') !== undefined);
  return passed < 0 ? log : log.slice(passed + 1);
}
