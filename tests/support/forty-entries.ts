import type { CutQuestion } from '../../src-core/mechanics/cut-planner.ts';

/** A line of 30 m with damage all along it, some of which must go. */
export const fortyEntries: CutQuestion = {
  length_m: 30,
  damages: Array.from({ length: 40 }, (_, i) => ({ from_m: 0.7 + i * 0.72, to_m: 0.75 + i * 0.72, strength_N: i % 7 === 3 ? undefined : 50_000 + ((i * 7919) % 40) * 1000 })),
  eyeUses_m: 0.3,
  clear_m: 0.01,
  leastPiece_m: 0.05,
  leastMain_m: 0.3,
  soundStrength_N: 92_000,
  eyeStrength_N: 88_000,
  outboardStrength_N: 88_000,
  outboardFrom_m: 29.5,
};
