import { between, type Amount } from '../units/amount.ts';
import { pipelineHandbook, riggersHandbook, wireRopeUsers } from './pull-sources.ts';
import type { Source } from './source.ts';
import { ownChoice, sources } from './sources.ts';

export interface SheaveEfficiency {
  readonly words: readonly [string, ...string[]];
  /** Share of the tension that passes the sheave: least and most that sources give. */
  readonly low: number;
  readonly high: number;
  readonly sources: readonly [Source, ...Source[]];
}

/** The handbooks give 2 to 4 % for rollers, common practice 4 to 5 %: either end may be the careful one. */
export const sheaveLossRoller = ownChoice('sheave-loss-between', 'between the 2 % of the handbooks (Wire Rope Users Manual, 4th ed., pp. 86-88) and the 5 % that is commonly counted for rollers');

/** Share of the tension left behind one sheave, by its bearing. */
export const sheaveEfficiencies: readonly SheaveEfficiency[] = [
  { words: ['plain'], low: 0.9, high: 0.917, sources: [sources['sheave-loss-plain'], pipelineHandbook, wireRopeUsers] },
  { words: ['bushed', 'bronze'], low: 0.917, high: 1 / 1.045, sources: [wireRopeUsers, riggersHandbook] },
  { words: ['roller', 'ball'], low: 0.95, high: 1 / 1.02, sources: [sheaveLossRoller, sources['sheave-loss-roller'], wireRopeUsers, pipelineHandbook, riggersHandbook] },
];

/** Bearing not told: anything from a plain sheave to rollers. */
export const sheaveUntold: SheaveEfficiency = {
  words: ['untold'],
  low: 0.9,
  high: 1 / 1.02,
  sources: [sources['sheave-loss-plain'], wireRopeUsers, riggersHandbook],
};

/** The same as a loss, for the values of practice. */
export const sheaveLoss = (word: 'plain' | 'roller'): Amount => {
  const { low, high } = bearingNamed(word)!;
  return between(1 - high, 1 - low);
};

export const bearingNamed = (word: string): SheaveEfficiency | undefined => sheaveEfficiencies.find((bearing) => bearing.words.includes(word));
