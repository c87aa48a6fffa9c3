import json from './tables/wire-rope-sheave-loss.json' with { type: 'json' };
import { sourceNamed, type Table } from './table.ts';

export interface SheaveLossRow {
  /** Sheave diameter over rope diameter. */
  readonly ratio: number;
  /** Share of the strength that is lost. */
  readonly loss: number;
}

/** Strength loss of wire rope on a sheave. It says nothing about fibre. */
export const wireRopeSheaveLossTable: Table<SheaveLossRow> = {
  about: json.about,
  source: sourceNamed(json.source),
  rows: json.rows.map((row) => ({ ratio: row.ratio, loss: row.loss_pct / 100 })),
};
