import type { Source } from './source.ts';
import { sources } from './sources.ts';

export interface MireFactor {
  /** How deep the vehicle stands. */
  readonly word: string;
  /** Times the vehicle's weight. */
  readonly factor: number;
  readonly source: Source;
}

const army = sources['fm-20-22-mire'];
const fireService = sources['fire-service-mire'];

/** How deep a vehicle stands in mire, and how many times its weight it then resists. */
export const mireFactors: readonly MireFactor[] = [
  { word: 'wheels', factor: 1, source: army },
  { word: 'sidewall', factor: 1, source: fireService },
  { word: 'hubs', factor: 2, source: fireService },
  { word: 'fenders', factor: 2, source: army },
  { word: 'frame', factor: 3, source: fireService },
  { word: 'cab', factor: 3, source: army },
];

export const mireNamed = (word: string): MireFactor | undefined => mireFactors.find((mire) => mire.word === word);
