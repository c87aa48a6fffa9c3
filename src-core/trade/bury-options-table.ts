import type { Source } from './source.ts';
import json from './tables/bury-options.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface BuryOptionRow {
  readonly splice: string;
  readonly materials: readonly string[];
  /** Bury, taper included, in diameters of the line. */
  readonly bury_d: number;
  readonly source: Source;
}

/** Published buries: the sources disagree, so all of them stand here. */
export const buryOptionsTable: Table<BuryOptionRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({ splice: row.splice, materials: row.materials, bury_d: row.bury_d, source: sourceNamed(row.source) })),
};
