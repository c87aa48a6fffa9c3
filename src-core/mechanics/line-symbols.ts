import type { SymbolDefinition } from './define-calculation.ts';

/** Symbols that the line and splice calculations share. */
export const lineSymbols = {
  F_b: { meaning: 'breaking strength', kind: 'breaking strength', above: 0, max: 1e8, carries: true },
  /** What damage has left: it may be nothing. */
  F_left: { meaning: 'breaking strength', kind: 'breaking strength', min: 0, max: 1e8, carries: true },
  d: { meaning: 'line diameter', kind: 'diameter', above: 0, max: 1 },
  T: { meaning: 'bury, taper included', kind: 'length', min: 0, max: 1000 },
  t: { meaning: 'taper, the last part of the bury', kind: 'length', min: 0, max: 1000 },
  E: { meaning: 'length of line around the eye', kind: 'length', min: 0, max: 1000 },
  c: { meaning: 'share by which the standing part shortens over the buried tail', kind: 'needed share', min: 0, max: 0.5 },
} as const satisfies Record<string, SymbolDefinition>;

/** A loss is a share of the whole. */
export const loss = (meaning: string): SymbolDefinition => ({ meaning, kind: 'needed share', min: 0, max: 1 });
