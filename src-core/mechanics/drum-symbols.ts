import type { SymbolDefinition } from './define-calculation.ts';

// Sizes beyond these are slips of the pen, not drums.
const largest_m = 10;
const longestLine_m = 100_000;

/** Symbols that the drum calculations share. */
export const drumSymbols = {
  B: { meaning: 'barrel diameter', kind: 'diameter', above: 0, max: largest_m },
  A: { meaning: 'flange diameter', kind: 'diameter', above: 0, max: largest_m },
  W: { meaning: 'width between the flanges', kind: 'length', above: 0, max: largest_m },
  d: { meaning: 'line diameter', kind: 'diameter', above: 0, max: 1 },
  w: { meaning: 'wraps on a full layer', kind: 'count', min: 1, max: 10_000, whole: true },
  n: { meaning: 'layer, counted from the barrel', kind: 'count', min: 1, max: 1000, whole: true },
  N: { meaning: 'number of layers', kind: 'count', min: 1, max: 1000, whole: true },
  L: { meaning: 'line length on the drum when all of it is spooled', kind: 'length', above: 0, max: longestLine_m },
  x: { meaning: 'line out', kind: 'length', min: 0, max: longestLine_m },
  F_1: { meaning: 'line pull on the first layer', kind: 'line pull', above: 0, max: 1e8 },
} as const satisfies Record<string, SymbolDefinition>;

/** Said of every calculation that stacks layers. */
export const stacking = 'layers lie straight on one another and wraps side by side; line that nests or flattens sits lower';
