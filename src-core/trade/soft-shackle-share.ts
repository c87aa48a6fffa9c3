import { ownWeaker, softShackleTests } from './pull-sources.ts';
import type { Source } from './source.ts';

export interface SoftShackleShare {
  readonly words: readonly [string, ...string[]];
  /** Strength in shares of the line it is tied from. */
  readonly low: number;
  readonly high: number;
  readonly sources: readonly [Source, ...Source[]];
}

/**
 * Strength of a soft shackle by its knot. The low end is what the testers claim for any well-set one, the high end what
 * they measured: a knot that is not set breaks far below.
 */
export const softShackleShares: readonly SoftShackleShare[] = [
  { words: ['diamond'], low: 1, high: 1.7, sources: [softShackleTests, ownWeaker] },
  { words: ['button'], low: 1.7, high: 2.3, sources: [softShackleTests, ownWeaker] },
];

export const softShackleNamed = (word: string): SoftShackleShare | undefined => softShackleShares.find((share) => share.words.includes(word));
