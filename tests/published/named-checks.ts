// Whole series that named documents print, typed from them a second time and worked by our calculations.
import '../../src-core/mechanics/all.ts';
import { checkWorkedExample, type WorkedCheck } from '../../src-core/mechanics/check-worked-example.ts';
import { calculations, type WorkedExample } from '../../src-core/mechanics/define-calculation.ts';
import { bendRatioSlides } from '../../src-core/trade/gear-sources.ts';
import { blockStressChart, riggersHandbook } from '../../src-core/trade/pull-sources.ts';
import type { Source } from '../../src-core/trade/source.ts';
import { sources } from '../../src-core/trade/sources.ts';

export interface NamedCheck extends WorkedExample {
  readonly calculation: string;
}

const series = <Row extends unknown[]>(calculation: string, source: Source, tolerance: number, rows: readonly Readonly<Row>[], example: (...row: Row) => Pick<WorkedExample, 'inputs' | 'expected'>): NamedCheck[] =>
  rows.map((row) => ({ calculation, source, tolerance, ...example(...(row as Row)) }));

const blockFactors: readonly (readonly [number, number])[] = [[0, 2], [10, 1.99], [20, 1.97], [30, 1.93], [40, 1.87], [45, 1.84], [50, 1.81], [60, 1.73], [70, 1.64], [80, 1.53], [90, 1.41], [100, 1.29], [110, 1.15], [120, 1]];

// Parts of line; advantage on bronze bushings (4.5 % loss at each sheave), and on anti-friction bearings (2 %).
const lineParts: readonly (readonly [number, number, number])[] = [
  [1, 0.96, 0.98], [2, 1.87, 1.94], [3, 2.75, 2.88], [4, 3.59, 3.81], [5, 4.39, 4.71], [6, 5.16, 5.6], [7, 5.9, 6.47], [8, 6.6, 7.32], [9, 7.27, 8.16], [10, 7.91, 8.98], [12, 9.11, 10.6], [16, 11.2, 13.6], [20, 13, 16.4], [24, 14.5, 18.9],
];
const efficiencyAtLoss = (loss: number): string => `${100 / (1 + loss)} %`;

const fids: readonly (readonly [string, string])[] = [['1/4', '5 1/2'], ['5/16', '6 3/4'], ['3/8', '7 3/4'], ['7/16', '9 1/2'], ['1/2', '11'], ['9/16', '12 1/4'], ['5/8', '14'], ['3/4', '16'], ['7/8', '19'], ['1', '21']];

const gradeA: readonly (readonly [string, number])[] = [
  ['3/16', 0.333], ['1/4', 0.5], ['5/16', 0.75], ['3/8', 1], ['7/16', 1.5], ['1/2', 2], ['5/8', 3.25], ['3/4', 4.75], ['7/8', 6.5], ['1', 8.5], ['1 1/8', 9.5], ['1 1/4', 12], ['1 3/8', 13.5], ['1 1/2', 17], ['1 3/4', 25], ['2', 35],
];

// Depth of a buried log, then what loam holds on each square foot of its face at 1:1, 1:2, 1:3 and 1:4.
const buriedLog: readonly (readonly [number, ...number[]])[] = [[3, 950, 1300, 1450, 1500], [4, 1750, 2200, 2600, 2700], [5, 2800, 3600, 4000, 4100], [6, 3800, 5100, 5800, 6000], [7, 5100, 7000, 8000, 8400]];

// The choker column is the vertical one halved and rounded to 50 lb; in the sizes left out here that rounding is more than a percent.
const chokers: readonly (readonly [number, number])[] = [[700, 350], [900, 450], [1100, 550], [1500, 750], [1800, 900], [2400, 1200], [3700, 1850], [5300, 2700], [6200, 3100]];

export const namedChecks: readonly NamedCheck[] = [
  ...series('block-load', sources['rigging-catalogue-blocks'], 0.006, blockFactors, (angle: number, factor: number) => ({ inputs: { T: '1 kN', θ: `${angle} deg` }, expected: `${factor} kN` })),
  ...series('block-load', blockStressChart, 0.006, [[90, 705], [30, 965], [0, 1000]], (angle: number, pounds: number) => ({ inputs: { T: '500 lbf', θ: `${angle} deg` }, expected: `${pounds} lbf` })),
  ...series('tackle-advantage', riggersHandbook, 0.006, lineParts, (parts: number, bushed: number, _rollers: number) => ({ inputs: { n: String(parts), E: efficiencyAtLoss(0.045) }, expected: String(bushed) })),
  ...series('tackle-advantage', riggersHandbook, 0.006, lineParts, (parts: number, _bushed: number, rollers: number) => ({ inputs: { n: String(parts), E: efficiencyAtLoss(0.02) }, expected: String(rollers) })),
  ...series('fid-length', sources['fid-chart'], 0.07, fids, (size: string, fid: string) => ({ inputs: { d: `${size} in` }, expected: `${fid} in` })),
  ...series('shackle-limit-grade-a', sources['rr-c-271'], 1e-9, gradeA, (size: string, shortTons: number) => ({ inputs: { D: `${size} in` }, expected: `${shortTons} short-ton` })),
  ...series('deadman-holding-power', sources['tm-5-5420-278-10'], 1e-9, buriedLog.flatMap(([depth, ...holds]) => holds.map((hold, i): [number, number, number] => [depth, i + 1, hold])), (depth: number, run: number, hold: number) => ({
    inputs: { D: `${depth} ft`, n: String(run), k: '1' },
    expected: `${hold} lb/ft2`,
  })),
  ...series('choker-limit', sources['29-cfr-1918-app-ii'], 0.02, chokers, (vertical: number, choker: number) => ({ inputs: { WLL: `${vertical} lbf` }, expected: `${choker} lbf` })),
  ...series('wire-bend-share', bendRatioSlides, 0.015, [[6, 80], [8, 84], [10, 86], [15, 88], [20, 92]], (ratio: number, share: number) => ({ inputs: { R: String(ratio) }, expected: `${share} %` })),
];

export const checkNamed = (check: NamedCheck): WorkedCheck => {
  const calculation = calculations().get(check.calculation);
  if (calculation === undefined) throw new Error(`there is no calculation ${check.calculation}`);
  return checkWorkedExample(calculation, check);
};

/** Every published number: the worked examples that stand with the calculations, and the series above. */
export const everyCheck = (): readonly WorkedCheck[] => [
  ...[...calculations().values()].flatMap((calculation) => calculation.worked.map((example) => checkWorkedExample(calculation, example))),
  ...namedChecks.map(checkNamed),
];

/** Sources that are documents somebody can look up, read by us or quoted where we read them. What is remembered, practice, our own choice or arithmetic is none. */
export const isNamed = (source: Source): boolean => source.trust === 'read' || source.trust === 'secondary';
