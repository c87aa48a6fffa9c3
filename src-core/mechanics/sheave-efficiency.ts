import { bearingNamed, sheaveUntold } from '../trade/sheave-efficiency.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

/** Share of the tension that passes a sheave on this bearing; anything from plain to rollers when the bearing is not told. */
export function sheaveEfficiency(bearing: string | undefined): Value {
  const row = bearing === undefined ? sheaveUntold : bearingNamed(bearing);
  if (row === undefined) return noFigure(`bearing ${bearing}`, `no source gives the friction of a sheave on the bearing \`${bearing}\``, 'write the efficiency of the block, or one of plain, bushed, roller');
  return tableValue(row.low, row.high, 'share', row.sources[0], 'write the bearing or the efficiency of the block');
}
