import { nylonStretchQuestion, ropeElongationTest } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const lineStretch = defineCalculation({
  name: 'line-stretch',
  means: 'stretch of the line under its tension',
  symbol: 'x',
  kind: 'distance',
  formula: 'x = ε L',
  symbols: {
    ε: { meaning: 'elongation at that tension, a share of the length', kind: 'needed share', min: 0, max: 1 },
    L: { meaning: 'length of line under tension', kind: 'distance', above: 0 },
  },
  sources: [sources['elastic-energy']],
  assumptions: ['elongation as the maker states it at that tension; no general figure is put in its place'],
  compute: ({ ε, L }) => ε * L,
  worked: [
    { inputs: { ε: '15 %', L: '30 in' }, expected: '4 1/2 in', tolerance: 1e-9, source: ropeElongationTest },
    { inputs: { ε: '1/3', L: '30 ft' }, expected: '10 ft', tolerance: 1e-9, source: nylonStretchQuestion },
  ],
});
