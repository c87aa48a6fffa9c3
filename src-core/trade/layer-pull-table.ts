import { unitNamed, toSI } from '../units/unit-table.ts';
import json from './tables/layer-pull.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface LayerPullRow {
  readonly layer: number;
  readonly linePull_N: number;
}

/** Published line pull by layer of one winch, for checking the layer formula. */
export const layerPullTable: Table<LayerPullRow> & { readonly tolerance: number; readonly twoLineDiametersByBarrelAndLine: number } = {
  about: json.about,
  source: sourceNamed(json.source),
  tolerance: json.tolerance,
  twoLineDiametersByBarrelAndLine: json.twoLineDiametersByBarrelAndLine,
  rows: json.rows.map((row) => ({ layer: row.layer, linePull_N: toSI(row.pull_lb, unitNamed('lbf')!) })),
};
