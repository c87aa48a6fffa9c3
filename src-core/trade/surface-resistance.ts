import { snowCase, towMagazine, winchAnswers, winchSellerGuide } from './pull-sources.ts';
import type { Source } from './source.ts';
import { sources } from './sources.ts';

const offRoadTable = sources['surface-fractions-read'];
const offRoadMemory = sources['surface-fractions'];

export interface SurfaceResistance {
  readonly words: readonly [string, ...string[]];
  /** Least and most share of the weight that sources give for a vehicle whose wheels turn. */
  readonly low: number;
  readonly high: number;
  readonly sources: readonly [Source, ...Source[]];
}

const row = (words: readonly [string, ...string[]], low: number, high: number, ...sources: [Source, ...Source[]]): SurfaceResistance => ({ words, low, high, sources });

/** Share of the weight that it takes to roll a vehicle. Sources disagree by a factor of two and more: both ends stand. */
export const surfaceResistances: readonly SurfaceResistance[] = [
  row(['hard-road', 'tarmac', 'road'], 1 / 25, 1 / 10, offRoadTable, towMagazine, winchAnswers),
  row(['grass'], 1 / 7, 1 / 3, offRoadMemory, towMagazine, winchAnswers),
  row(['hard-wet-sand'], 1 / 6, 1 / 6, offRoadTable),
  row(['gravel'], 1 / 5, 1 / 3, offRoadMemory, towMagazine, winchAnswers),
  row(['soft-wet-sand'], 1 / 5, 1 / 3, offRoadMemory, winchAnswers),
  row(['soft-dry-sand', 'sand'], 1 / 4, 0.85, offRoadMemory, winchSellerGuide),
  row(['snow'], 0.1, 0.3, snowCase),
  row(['shallow-mud', 'mud'], 1 / 3, 1, offRoadMemory, winchSellerGuide),
  row(['bog', 'marsh', 'clay'], 1 / 2, 1, offRoadTable, winchSellerGuide),
];

export const surfaceNamed = (word: string): SurfaceResistance | undefined => surfaceResistances.find((surface) => surface.words.includes(word));
