import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/fid-chart.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface FidRow {
  readonly size: string;
  readonly diameter_m: number;
  readonly fid_m: number;
  readonly shortFid_m: number;
}

/** Fid lengths as sold, by line diameter: near 21 d, not exactly. */
export const fidChart: Table<FidRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({
    size: row.size,
    diameter_m: toSI(row.diameter_in, unitNamed('in')!),
    fid_m: toSI(row.fid_in, unitNamed('in')!),
    shortFid_m: toSI(row.shortFid_in, unitNamed('in')!),
  })),
};
