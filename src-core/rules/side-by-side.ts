import { show } from '../assess/show.ts';
import { isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import type { BoundQuantity } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { kinds } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { printSource } from '../trade/source.ts';

/** A written length as it stands in the file, in diameters where it was written so. */
export const asWritten = (q: BoundQuantity): string => printAmount(exactly(q.value), q.inDiameters === true ? 'diameters' : kinds[q.kind].dimension, { unit: q.unit });

/** A limit in the unit of the written length it is compared with, rounded to the careful side. */
export const limitBeside = (q: BoundQuantity, limit: Given, limit_d: Value): string =>
  q.inDiameters === true && !isUnknown(limit_d) ? show(limit_d, { unit: q.unit, careful: 'up' }) : show(limit, { unit: q.unit, careful: 'up' });

/** Where a limit comes from, for the source of a finding. */
export function sourceOfLimit(limit: Value): string | undefined {
  if (isUnknown(limit)) return undefined;
  if (limit.origin.from === 'written') return 'the figure written in the `practice` block';
  return limit.origin.from === 'assumed' || limit.origin.from === 'constant' ? printSource(limit.origin.source) : undefined;
}
