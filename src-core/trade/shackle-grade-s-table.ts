import { isNear } from '../base/compare.ts';
import { standardGravity, unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/shackle-grade-s.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface GradeSShackleRow {
  readonly body_m: number;
  readonly pin_m: number;
  /** Working limit as published, a mass, taken to a force by standard gravity. */
  readonly wll_N: number;
}

/** Grade S bow and dee shackles. */
export const shackleGradeSTable: Table<GradeSShackleRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({
    body_m: toSI(row.body_mm, unitNamed('mm')!),
    pin_m: toSI(row.pin_mm, unitNamed('mm')!),
    wll_N: toSI(row.wll_t, unitNamed('t')!) * standardGravity,
  })),
};

/** The row of exactly this body; a size that is not listed has no rating here. */
export const gradeSShackleOfBody = (body_m: number): GradeSShackleRow | undefined => shackleGradeSTable.rows.find((row) => isNear(row.body_m, body_m));
