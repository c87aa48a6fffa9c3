import { kinds, type Kind } from '../units/dimension.ts';
import { printNumber, unitFor, type System } from '../units/print.ts';
import type { Unit } from '../units/unit-table.ts';

/** From an SI value to a coordinate. */
export type Scale = (value: number) => number;

export function scaleOf(from: number, to: number, start: number, end: number): Scale {
  const span = to - from;
  return (value) => (span === 0 ? start : start + ((value - from) / span) * (end - start));
}

export interface Tick {
  /** SI. */
  readonly at: number;
  readonly label: string;
}

/** The round step, in the reader's unit, that gives at most `most` parts. */
export function roundStep(span: number, most: number): number {
  if (!(span > 0)) return 1;
  const rough = span / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = (rough / power) * (1 - 1e-9);
  return (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10) * power;
}

/** Round values from zero up to `highest` (SI), in the unit they are read in. */
export function ticks(highest: number, unit: Unit | undefined, most: number): Tick[] {
  const factor = unit?.factor ?? 1;
  const step = roundStep(highest / factor, most);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const found: Tick[] = [];
  for (let i = 0; i * step <= (highest / factor) * (1 + 1e-9); i++) found.push({ at: i * step * factor, label: printNumber(i * step, 'nearest', decimals) });
  return found;
}

/** The unit in which a row of values is read: the writer's own, else the usual one of the system for the greatest of them. */
export const axisUnit = (kind: Kind, highest: number, own: Unit | undefined, system: System): Unit | undefined => unitFor(highest, kinds[kind].dimension, { unit: own, system });
