import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/fibre-rope-slings.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface FibreSlingRow {
  readonly size: string;
  readonly diameter_m: number;
  readonly vertical_N: number;
  readonly choker_N: number;
  /** By the angle of the legs from vertical, in degrees. */
  readonly basket_N: Readonly<Record<0 | 30 | 45 | 60, number>>;
}

const pounds = (value: number): number => toSI(value, unitNamed('lbf')!);

/** Working load of fibre rope slings at a factor of 5. */
export const fibreSlingTable: Table<FibreSlingRow> & { readonly factor: number } = {
  about: json.about,
  source: sourceNamed(json.source),
  factor: json.factor,
  rows: json.rows.map((row) => ({
    size: row.size,
    diameter_m: toSI(row.diameter_in, unitNamed('in')!),
    vertical_N: pounds(row.vertical_lb),
    choker_N: pounds(row.choker_lb),
    basket_N: { 0: pounds(row.basket0_lb), 30: pounds(row.basket30_lb), 45: pounds(row.basket45_lb), 60: pounds(row.basket60_lb) },
  })),
};
