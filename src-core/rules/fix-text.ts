import type { Given } from '../mechanics/derivation.ts';
import type { BoundQuantity } from '../model/bound.ts';
import { kinds } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { exactly } from '../units/amount.ts';

/** A needed length as text for the file, in the unit that stands there, rounded up. */
export function lengthText(needed: Given, written: BoundQuantity): string {
  const unit = written.inDiameters ? undefined : written.unit;
  return printAmount(exactly(needed.amount.high), kinds[needed.kind].dimension, { unit, careful: 'up', system: unit?.system === 'us' ? 'us' : 'metric' });
}
