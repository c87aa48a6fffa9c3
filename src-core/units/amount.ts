import type { Dimension } from './dimension.ts';
import { ambiguousUnits, type Unit } from './unit-table.ts';

/** An SI number known between two ends. Most are exact: low equals high. */
export interface Amount {
  readonly low: number;
  readonly high: number;
}

export const exactly = (value: number): Amount => ({ low: value, high: value });
export const between = (a: number, b: number): Amount => ({ low: Math.min(a, b), high: Math.max(a, b) });
export const isRange = (amount: Amount): boolean => amount.low !== amount.high;

/** A number as somebody wrote it: its SI value, and the unit to answer in. */
export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
  readonly unit: Unit;
}

export const isAmbiguousUnit = (word: string): boolean => Object.hasOwn(ambiguousUnits, word);
