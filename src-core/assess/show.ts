import { isUnknown, type Derivation, type Given, type Unknown, type Value } from '../mechanics/derivation.ts';
import { showAmount } from '../mechanics/explain.ts';
import { exactly, type Amount } from '../units/amount.ts';
import { kinds, type Careful, type Dimension } from '../units/dimension.ts';
import type { System } from '../units/print.ts';
import type { Unit } from '../units/unit-table.ts';

const foundUnits = new WeakMap<Derivation, Map<Dimension, Unit | undefined>>();

/** The unit of the nearest written value of the same dimension that a value was made of. */
export function writtenUnit(value: Given | Derivation, dimension: Dimension): Unit | undefined {
  if (!('calculation' in value)) {
    const { origin } = value;
    if (origin.from === 'derived') return writtenUnit(origin.derivation, dimension);
    return origin.from === 'written' && origin.unit?.dimension === dimension ? origin.unit : undefined;
  }
  const found = foundUnits.get(value) ?? new Map<Dimension, Unit | undefined>();
  foundUnits.set(value, found);
  if (!found.has(dimension)) found.set(dimension, nearestUnit(value, dimension));
  return found.get(dimension);
}

/** One step farther from the derivation each time; what feeds several steps is looked at once. */
function nearestUnit(derivation: Derivation, dimension: Dimension): Unit | undefined {
  const seen = new Set<Derivation>([derivation]);
  for (let near = [derivation]; near.length > 0; ) {
    const next: Derivation[] = [];
    for (const { inputs } of near) {
      for (const { given: { origin } } of inputs) {
        if (origin.from === 'written' && origin.unit?.dimension === dimension) return origin.unit;
        if (origin.from !== 'derived' || seen.has(origin.derivation)) continue;
        seen.add(origin.derivation);
        next.push(origin.derivation);
      }
    }
    near = next;
  }
  return undefined;
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
  return showAmount(value.amount, dimension, { unit, system: writtenSystem(value), careful: options.careful ?? careful });
}

/** An amount printed like a value: in its unit or its system. */
export const showLike = (amount: Amount, like: Given, careful: Careful, unit?: Unit): string => show({ ...like, amount, origin: like.origin }, { careful, unit });

/** The value, or `not known` and what it is at most. */
export const showValue = (value: Value, options: ShowOptions = {}): string => (isUnknown(value) ? notKnown(value, options) : show(value, options));

/** `not known`, and what it is at most where that is. */
export const notKnown = ({ atMost }: Unknown, options: ShowOptions = {}): string =>
  atMost === undefined ? 'not known' : `not known, ${showAtMost(atMost, options)}`;

const showAtMost = (bound: Given, options: ShowOptions): string => `at most ${showLike(exactly(bound.amount.high), bound, 'up', options.unit)}`;

/** The value, or what it is at most. */
export const showMost = (value: Value, options: ShowOptions = {}): string => (isUnknown(value) ? (value.atMost === undefined ? 'not known' : showAtMost(value.atMost, options)) : show(value, options));

/** The unit a written value stands in, to show its limit in the same one. */
export const unitOf = (value: Value): Unit | undefined => (isUnknown(value) ? undefined : value.origin.from === 'written' ? value.origin.unit : undefined);
