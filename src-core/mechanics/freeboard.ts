import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { drumSymbols, stacking } from './drum-symbols.ts';

const standing = (A: number, B: number, d: number, n: number): number => (A - B) / 2 - n * d;

export const freeboard = defineCalculation({
  name: 'freeboard',
  means: 'flange above the outermost layer',
  symbol: 'f',
  kind: 'usable length',
  formula: 'f = (A − B) / 2 − n d',
  symbols: { A: drumSymbols.A, B: drumSymbols.B, d: drumSymbols.d, n: { ...drumSymbols.n, meaning: 'outermost layer' } },
  sources: [sources.geometry, sources['practice-freeboard']],
  assumptions: [stacking],
  refuse: ({ A, B }) => (A <= B ? 'the flange is not larger than the barrel' : undefined),
  compute: ({ A, B, d, n }) => standing(A, B, d, n),
  notes: ({ A, B, d, n }) => (standing(A, B, d, n) < 0 ? ['the outermost layer stands above the flange'] : []),
  worked: [],
  noExample: 'no published freeboard for a stated drum and line was found',
});
