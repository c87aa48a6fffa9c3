import * as z from 'zod/mini';
import { sources } from './sources.ts';
import blockLoadFactor from './tables/block-load-factor.json' with { type: 'json' };
import buryOptions from './tables/bury-options.json' with { type: 'json' };
import deadman from './tables/deadman-holding.json' with { type: 'json' };
import fibreSlings from './tables/fibre-rope-slings.json' with { type: 'json' };
import fidChart from './tables/fid-chart.json' with { type: 'json' };
import layerPull from './tables/layer-pull.json' with { type: 'json' };
import nylonDoubleBraid from './tables/nylon-double-braid.json' with { type: 'json' };
import pickets from './tables/picket-holdfasts.json' with { type: 'json' };
import shackleGradeS from './tables/shackle-grade-s.json' with { type: 'json' };
import shackleRRC271 from './tables/shackle-rr-c-271.json' with { type: 'json' };
import sheaveLoss from './tables/wire-rope-sheave-loss.json' with { type: 'json' };

// Only tests and tools import this file: a program that reads a rig does not pay for the schemas.

const positive = z.number().check(z.positive(), z.lte(1e6));
const notNegative = z.number().check(z.gte(0), z.lte(1e6));
const share = z.number().check(z.gte(0), z.lte(1));
const text = z.string().check(z.minLength(1));
const source = z.enum(Object.keys(sources) as [string, ...string[]]);

const table = <Row extends z.core.$ZodType, More extends z.core.$ZodShape>(row: Row, more: More) =>
  z.strictObject({ about: text, source, rows: z.array(row).check(z.minLength(1)), ...more });

const checks: readonly (readonly [name: string, schema: z.core.$ZodType, json: unknown])[] = [
  ['layer-pull', table(z.strictObject({ layer: z.int().check(z.positive()), pull_lb: positive }), { tolerance: share, twoLineDiametersByBarrelAndLine: share }), layerPull],
  ['block-load-factor', table(z.strictObject({ angle_deg: z.number().check(z.gte(0), z.lte(180)), factor: z.number().check(z.gte(0), z.lte(2)) }), { tolerance: share }), blockLoadFactor],
  ['deadman-holding', table(z.strictObject({ depth_ft: positive, slope: z.string().check(z.regex(/^1:\d+$/)), holding_lb_ft2: positive }), { soilFactors: z.record(text, positive), extraLength_ft: positive }), deadman],
  ['picket-holdfasts', table(z.strictObject({ form: z.string().check(z.regex(/^(single|\d(-\d)+)$/)), holding_lb: positive }), {}), pickets],
  [
    'fibre-rope-slings',
    table(z.strictObject({ size: text, diameter_in: positive, vertical_lb: positive, choker_lb: positive, basket0_lb: positive, basket30_lb: positive, basket45_lb: positive, basket60_lb: positive }), { factor: positive }),
    fibreSlings,
  ],
  ['nylon-double-braid', table(z.strictObject({ circumference_in: positive, break_kips: positive }), { wetFactor: share }), nylonDoubleBraid],
  ['shackle-grade-s', table(z.strictObject({ body_mm: positive, pin_mm: positive, wll_t: positive }), {}), shackleGradeS],
  ['shackle-rr-c-271', table(z.strictObject({ size: text, size_in: positive, wll_shortTons: positive }), {}), shackleRRC271],
  ['wire-rope-sheave-loss', table(z.strictObject({ ratio: positive, loss_pct: z.number().check(z.gte(0), z.lte(100)) }), {}), sheaveLoss],
  ['fid-chart', table(z.strictObject({ size: text, diameter_in: positive, fid_in: positive, shortFid_in: positive }), {}), fidChart],
  ['bury-options', table(z.strictObject({ splice: text, materials: z.array(text).check(z.minLength(1)), bury_d: notNegative, source }), {}), buryOptions],
];

/** Names of the tables that are checked. */
export const checkedTables: readonly string[] = checks.map(([name]) => name);

/** Checks a table's JSON by name: sentences on what is wrong, none when all is well. */
export function checkTable(name: string, json: unknown): string[] {
  const check = checks.find(([other]) => other === name);
  if (check === undefined) return [`${name}: no schema stands for this table`];
  const result = z.safeParse(check[1], json);
  return result.success ? [] : result.error.issues.map((issue) => `${name}: ${issue.path.join('.')}: ${issue.message || issue.code}`);
}

/** Checks every table as it stands in the repository. */
export const checkTables = (): string[] => checks.flatMap(([name, , json]) => checkTable(name, json));
