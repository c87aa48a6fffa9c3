import { isUnknown, type Derivation, type Given, type Value } from '../mechanics/derivation.ts';
import { showAmount } from '../mechanics/explain.ts';
import type { Amount } from '../units/amount.ts';
import { kinds, type Careful, type Dimension } from '../units/dimension.ts';
import type { System } from '../units/print.ts';
import type { Unit } from '../units/unit-table.ts';

/** The unit of the nearest written value of the same dimension that a value was made of. */
export function writtenUnit(value: Given | Derivation, dimension: Dimension, depth = 4): Unit | undefined {
  if ('calculation' in value) {
    for (const input of value.inputs) {
      const unit = depth > 0 ? writtenUnit(input.given, dimension, depth - 1) : undefined;
      if (unit !== undefined) return unit;
    }
    return undefined;
  }
  if (value.origin.from === 'written') return value.origin.unit?.dimension === dimension ? value.origin.unit : undefined;
  return value.origin.from === 'derived' && depth > 0 ? writtenUnit(value.origin.derivation, dimension, depth - 1) : undefined;
}

/** The system of units that a value was written in, as far as its inputs tell. */
export function writtenSystem(value: Given | Derivation): System {
  for (const dimension of ['length', 'force', 'mass', kinds[value.kind].dimension] as const) {
    const unit = writtenUnit(value, dimension);
    if (unit !== undefined && unit.system !== 'both') return unit.system;
  }
  return 'metric';
}

export interface ShowOptions {
  readonly unit?: Unit | undefined;
  readonly careful?: Careful | undefined;
}

/** A value as a person reads it: written ones in their own unit, derived ones in the writer's system, rounded to the careful side. */
export function show(value: Given, options: ShowOptions = {}): string {
  const { dimension, careful } = kinds[value.kind];
  // Nothing is nothing in every system.
  if (value.origin.from === 'constant' && value.amount.low === 0 && value.amount.high === 0 && options.unit === undefined) return '0';
  const own = value.origin.from === 'written' ? value.origin.unit : undefined;
  const force = dimension === 'force' ? writtenUnit(value, 'force') : undefined;
  const unit = options.unit?.dimension === dimension ? options.unit : (own ?? (force !== undefined && Math.abs(value.amount.high) >= force.factor ? force : undefined));
  return showAmount(value.amount, dimension, { unit, system: writtenSystem(value), careful: options.careful ?? (value.origin.from === 'written' ? 'nearest' : careful) });
}

/** An amount printed like a value: in its unit or its system. */
export const showLike = (amount: Amount, like: Given, careful: Careful, unit?: Unit): string => show({ ...like, amount, origin: like.origin }, { careful, unit });

/** The value, or `not known`. */
export const showValue = (value: Value, options: ShowOptions = {}): string => (isUnknown(value) ? 'not known' : show(value, options));

/** The unit a written value stands in, to show its limit in the same one. */
export const unitOf = (value: Value): Unit | undefined => (isUnknown(value) ? undefined : value.origin.from === 'written' ? value.origin.unit : undefined);
