import { picketTable } from '../trade/picket-table.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

const forms = picketTable.rows.map((row) => row.form).join(', ');

/** Holding power of a picket holdfast (`single`, `1-1-1`, `3-2-1`): published for undisturbed loam, and for nothing else. */
export function picketHold(form: string, soil: string | undefined): Value {
  const help = 'write the holding power, or prove it with a pull before it is needed';
  if (soil === undefined) return noFigure(`soil at pickets ${form}`, 'the soil that the pickets stand in is not given', 'write the soil; a figure is published for loam');
  if (soil !== 'loam') return noFigure(`pickets in ${soil}`, `holding power of pickets is published for loam, not for ${soil}`, help);
  const row = picketTable.rows.find((candidate) => candidate.form === form);
  if (row === undefined) return noFigure(`pickets ${form}`, `no holding power is published for pickets set ${form}; known are ${forms}`, help);
  return tableValue(row.holding_N, row.holding_N, 'holding power', picketTable.source, help);
}
