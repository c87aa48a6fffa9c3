import { pipelineHandbook, riggersHandbook, wireRopeUsers } from './pull-sources.ts';
import type { Source } from './source.ts';
import { sources } from './sources.ts';

export interface SheaveEfficiency {
  readonly words: readonly [string, ...string[]];
  /** Share of the tension that passes the sheave: least and most that sources give. */
  readonly low: number;
  readonly high: number;
  readonly sources: readonly [Source, ...Source[]];
}

/** Share of the tension left behind one sheave, by its bearing. */
export const sheaveEfficiencies: readonly SheaveEfficiency[] = [
  { words: ['plain'], low: 0.9, high: 0.917, sources: [sources['sheave-loss-plain'], pipelineHandbook, wireRopeUsers] },
  { words: ['bushed', 'bronze'], low: 0.917, high: 1 / 1.045, sources: [wireRopeUsers, riggersHandbook] },
  { words: ['roller', 'ball'], low: 1 / 1.04, high: 1 / 1.02, sources: [wireRopeUsers, pipelineHandbook, riggersHandbook] },
];

/** Bearing not told: anything from a plain sheave to rollers. */
export const sheaveUntold: SheaveEfficiency = {
  words: ['untold'],
  low: 0.9,
  high: 1 / 1.02,
  sources: [sources['sheave-loss-plain'], wireRopeUsers, riggersHandbook],
};

export const bearingNamed = (word: string): SheaveEfficiency | undefined => sheaveEfficiencies.find((bearing) => bearing.words.includes(word));
