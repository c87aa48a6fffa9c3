import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/nylon-double-braid.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface NylonDoubleBraidRow {
  readonly circumference_m: number;
  readonly averageBreak_N: number;
}

/** Average break of dry nylon double braid by circumference. */
export const nylonDoubleBraidTable: Table<NylonDoubleBraidRow> & { readonly wetFactor: number } = {
  about: json.about,
  source: sourceNamed(json.source),
  wetFactor: json.wetFactor,
  rows: json.rows.map((row) => ({ circumference_m: toSI(row.circumference_in, unitNamed('in')!), averageBreak_N: toSI(row.break_kips, unitNamed('kip')!) })),
};
