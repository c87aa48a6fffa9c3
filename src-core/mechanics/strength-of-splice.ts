import { ownChoice, sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols, loss } from './line-symbols.ts';

export const strengthOfSplice = defineCalculation({
  name: 'strength-of-splice',
  means: 'strength of the splice',
  symbol: 'F_s',
  kind: 'breaking strength',
  formula: 'F_s = F_b η min(1, T / T_0) (1 − β max(0, 1 − t / t_0))',
  symbols: {
    F_b: lineSymbols.F_b,
    η: { meaning: 'share of the line\'s strength that a full splice keeps', kind: 'share', above: 0, max: 1 },
    T: lineSymbols.T,
    T_0: { meaning: 'needed bury', kind: 'needed length', above: 0, max: 1000 },
    t: lineSymbols.t,
    t_0: { meaning: 'needed taper', kind: 'needed length', above: 0, max: 1000 },
    β: loss('share of strength lost when the tail ends blunt'),
  },
  sources: [
    sources['maker-12-strand-eye'],
    sources['blunt-tail-tests'],
    ownChoice('short-bury-linear', 'a short bury is counted by its share of the needed one and a short taper by its share of the blunt loss; no measured relation was found'),
  ],
  assumptions: ['the bury counts from throat to tail end, taper included'],
  refuse: ({ T, t }) => (t > T * (1 + 1e-12) ? 'the taper is longer than the bury it is part of' : undefined),
  compute: ({ F_b, η, T, T_0, t, t_0, β }) => F_b * η * Math.min(1, T / T_0) * (1 - β * Math.max(0, 1 - t / t_0)),
  worked: [
    {
      inputs: { F_b: '100 kN', η: '90 to 100 %', T: '63 mm', T_0: '63 mm', t: '21 mm', t_0: '21 mm', β: '8.7 %' },
      expected: '90 to 100 kN',
      tolerance: 1e-9,
      source: sources['maker-12-strand-eye'],
    },
    {
      inputs: { F_b: '100 kN', η: '100 %', T: '24 mm', T_0: '24 mm', t: '0 mm', t_0: '8 mm', β: '7.9 to 8.7 %' },
      expected: '91.3 to 92.1 kN',
      tolerance: 1e-9,
      source: sources['blunt-tail-tests'],
    },
  ],
});
