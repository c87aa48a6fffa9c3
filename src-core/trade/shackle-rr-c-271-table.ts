import { isNear } from '../base/compare.ts';
import { standardGravity, unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/shackle-rr-c-271.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface GradeAShackleRow {
  readonly size: string;
  readonly size_m: number;
  /** Working limit as published, a mass, taken to a force by standard gravity. */
  readonly wll_N: number;
}

/** Grade A shackles by inch size. */
export const shackleRRC271Table: Table<GradeAShackleRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({
    size: row.size,
    size_m: toSI(row.size_in, unitNamed('in')!),
    wll_N: toSI(row.wll_shortTons, unitNamed('short-ton')!) * standardGravity,
  })),
};

/** The row of exactly this size; a size that is not listed has no rating here. */
export const gradeAShackleOfSize = (size_m: number): GradeAShackleRow | undefined => shackleRRC271Table.rows.find((row) => isNear(row.size_m, size_m));
