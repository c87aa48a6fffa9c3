import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const lineWoundInRun = defineCalculation({
  name: 'line-wound-in-run',
  means: 'line wound on in one run at full duty',
  symbol: 'l',
  kind: 'usable length',
  formula: 'l = v τ',
  symbols: {
    v: { meaning: 'line speed', kind: 'speed', above: 0, max: 100 },
    τ: { meaning: 'time it may run', kind: 'time', above: 0, max: 86_400 },
  },
  sources: [sources['lengths-add']],
  assumptions: ['the speed holds for the load that the time is given for'],
  compute: ({ v, τ }) => v * τ,
  worked: [],
  noExample: 'a speed times a time; no published example was found',
});
