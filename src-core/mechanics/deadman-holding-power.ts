import { isAbove, isBelow } from '../base/compare.ts';
import { ownRowBelow } from '../trade/pull-sources.ts';
import { deadmanTable as table } from '../trade/deadman-table.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

const depths = [...new Set(table.rows.map((row) => row.depth_m))].sort((a, b) => a - b);
const runs = [...new Set(table.rows.map((row) => row.run))].sort((a, b) => a - b);
const foot_m = toSI(1, unitNamed('ft')!);

/** The weaker of the rows on either side: not deeper than the log lies, not flatter than it is pulled. */
const weaker = (steps: readonly number[], value: number): number => steps.findLast((step) => !isBelow(value, step)) ?? NaN;

/** Factor of the soil on the figures for loam; unknown for a soil that the table does not name. */
export function deadmanSoilFactor(soil: string): Value {
  const factor = table.soilFactors[soil];
  if (factor === undefined) return noFigure(`deadman in ${soil}`, `holding power of a buried log is not published for ${soil}`, `known are ${Object.keys(table.soilFactors).join('; ')}`);
  return tableValue(factor, factor, 'count', table.source, 'write the holding power');
}

export const deadmanHoldingPower = defineCalculation({
  name: 'deadman-holding-power',
  means: 'holding power on the face of a buried log',
  symbol: 'HP',
  kind: 'pressure',
  formula: 'HP = k × table 9 at depth D and slope 1 : n',
  symbols: {
    D: { meaning: 'mean depth of the log', kind: 'usable length', min: depths[0]! },
    n: { meaning: 'run of the pull for one of rise', kind: 'count', min: runs[0]! },
    k: { meaning: 'factor of the soil on loam', kind: 'count', above: 0, max: 5 },
  },
  sources: [table.source, ownRowBelow],
  assumptions: ['between two rows the shallower depth and the steeper pull count'],
  compute: ({ D, n, k }) => {
    const depth_m = weaker(depths, D);
    const run = weaker(runs, n);
    return k * (table.rows.find((row) => row.depth_m === depth_m && row.run === run)?.holding_Pa ?? NaN);
  },
  notes: ({ D, n }) => [
    ...(isAbove(D, depths.at(-1)!) ? [`the table ends at ${Math.round(depths.at(-1)! / foot_m)} ft; nothing more is counted below that`] : []),
    ...(isAbove(n, runs.at(-1)!) ? [`the table ends at a slope of 1:${runs.at(-1)!}; nothing more is counted for a flatter pull`] : []),
  ],
  worked: [
    { inputs: { D: '3 ft', n: '1', k: '1' }, expected: '950 lb/ft2', tolerance: 1e-9, source: table.source },
    { inputs: { D: '5 ft', n: '3', k: '1' }, expected: '4,000 lb/ft2', tolerance: 1e-9, source: table.source },
    { inputs: { D: '7 ft', n: '4', k: '1' }, expected: '8,400 lb/ft2', tolerance: 1e-9, source: table.source },
  ],
});
