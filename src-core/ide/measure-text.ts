import type { BoundQuantity } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { kinds } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { standardGravity, unitNamed } from '../units/unit-table.ts';

/**
 * A written quantity in its own unit and in the others that people think in: a load as force and as mass, a length in
 * both systems. Rounded to the careful side of its kind.
 */
export function measureText(q: BoundQuantity): { readonly lead: string; readonly also: string | undefined } {
  if (q.inDiameters) return { lead: printAmount(exactly(q.value), 'diameters', { unit: q.unit }), also: q.unit.symbol === 'fids' ? printAmount(exactly(q.value), 'diameters') : undefined };
  const { dimension, careful } = kinds[q.kind];
  const written = q.mass !== undefined ? printAmount(exactly(q.mass), 'mass', { unit: q.unit }) : q.unit.dimension === 'ratio' && dimension === 'angle' ? printAmount(exactly(Math.tan(q.value)), 'ratio') : printAmount(exactly(q.value), dimension, { unit: q.unit });
  const others = new Set<string>();
  const add = (value: number, of: typeof dimension, unit: string): void => void others.add(printAmount(exactly(value), of, { unit: unitNamed(unit), careful }));
  if (dimension === 'force') {
    add(q.value, 'force', 'kN');
    add(q.value, 'force', 'lbf');
    if (q.mass === undefined) others.add(`the weight of ${printAmount(exactly(q.value / standardGravity), 'mass', { careful })}`);
  } else if (dimension === 'angle') {
    add(q.value, 'angle', 'deg');
    if (q.value < Math.PI / 2) others.add(`${printAmount(exactly(Math.tan(q.value)), 'ratio')} slope`);
  } else {
    for (const system of ['metric', 'us'] as const) others.add(printAmount(exactly(q.value), dimension, { system, careful: careful === 'nearest' ? undefined : careful }));
  }
  others.delete(written);
  return { lead: written, also: others.size === 0 ? undefined : [...others].join(' · ') };
}
