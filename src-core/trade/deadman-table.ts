import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/deadman-holding.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface DeadmanRow {
  readonly depth_m: number;
  /** Rise to run of the pull, as published: `1:3`. */
  readonly slope: string;
  /** Run for one of rise: 3 for `1:3`. */
  readonly run: number;
  readonly holding_Pa: number;
}

/** Holding power of a buried log in loam for each square metre of its face, by depth and slope. */
export const deadmanTable: Table<DeadmanRow> & {
  readonly soilFactors: Readonly<Record<string, number>>;
  /** Added to the length that holding power alone asks for. */
  readonly extraLength_m: number;
} = {
  about: json.about,
  source: sourceNamed(json.source),
  soilFactors: json.soilFactors,
  extraLength_m: toSI(json.extraLength_ft, unitNamed('ft')!),
  rows: json.rows.map((row) => ({
    depth_m: toSI(row.depth_ft, unitNamed('ft')!),
    slope: row.slope,
    run: Number(row.slope.split(':')[1]),
    holding_Pa: toSI(row.holding_lb_ft2, unitNamed('lb/ft2')!),
  })),
};
