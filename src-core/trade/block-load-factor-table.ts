import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/block-load-factor.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface BlockLoadFactorRow {
  readonly angle_rad: number;
  /** As published, cut off behind the second decimal. */
  readonly factor: number;
}

/** Published load on a block by the angle between the parts, for checking 2 cos(θ/2). */
export const blockLoadFactorTable: Table<BlockLoadFactorRow> & { readonly tolerance: number } = {
  about: json.about,
  source: sourceNamed(json.source),
  tolerance: json.tolerance,
  rows: json.rows.map((row) => ({ angle_rad: toSI(row.angle_deg, unitNamed('deg')!), factor: row.factor })),
};
