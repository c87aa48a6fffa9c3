import { show, showValue, writtenSystem, writtenUnit, type ShowOptions } from '../assess/show.ts';
import { asGiven, isUnknown, type Cause, type Derived, type Given, type Value } from '../mechanics/derivation.ts';
import { showAmount } from '../mechanics/explain.ts';
import type { Amount } from '../units/amount.ts';
import type { Careful, Dimension } from '../units/dimension.ts';
import type { System } from '../units/print.ts';
import type { Unit } from '../units/unit-table.ts';

/** How one picture prints its figures: everything of one dimension in one unit, the writer's. */
export interface Figures {
  readonly system: System;
  readonly length: Unit | undefined;
  readonly force: Unit | undefined;
}

/** Units and system as the first of some values was written. */
export function figuresOf(lengths: readonly Value[], forces: readonly Value[]): Figures {
  const firstUnit = (values: readonly Value[], dimension: Dimension): Unit | undefined => {
    for (const value of values) {
      const unit = isUnknown(value) ? undefined : writtenUnit(value, dimension);
      if (unit !== undefined) return unit;
    }
    return undefined;
  };
  const known = [...lengths, ...forces].find((v): v is Given => !isUnknown(v));
  return { system: known === undefined ? 'metric' : writtenSystem(known), length: firstUnit(lengths, 'length'), force: firstUnit(forces, 'force') };
}

export const printLength = (amount: Amount, figures: Figures, careful: Careful = 'nearest'): string => showAmount(amount, 'length', { unit: figures.length, system: figures.system, careful });
export const printForce = (amount: Amount, figures: Figures, careful: Careful): string => showAmount(amount, 'force', { unit: figures.force, system: figures.system, careful });

export const valueOf = (derived: Derived): Value => asGiven(derived);
export const showDerived = (derived: Derived, options: ShowOptions = {}): string => showValue(asGiven(derived), options);
export const causesOf = (...values: readonly (object | undefined)[]): Cause[] => values.flatMap((v) => (v !== undefined && isUnknown(v) ? [v.unknown] : []));
export const isKnown = (value: Value): value is Given => !isUnknown(value);
/** In the picture's unit of force, rounded to the careful side. */
export const showForce = (value: Value, figures: Figures): string => showValue(value, { unit: figures.force });
export const showLength = (value: Value, figures: Figures): string => (isUnknown(value) ? 'not known' : show(value, { unit: figures.length }));
