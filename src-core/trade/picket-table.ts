import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/picket-holdfasts.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface PicketRow {
  /** Pickets in each group, from the load backwards: `3-2-1`. */
  readonly form: string;
  readonly holding_N: number;
}

/** Holding power of picket holdfasts in loam. */
export const picketTable: Table<PicketRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({ form: row.form, holding_N: toSI(row.holding_lb, unitNamed('lbf')!) })),
};
