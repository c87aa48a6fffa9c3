import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const chokerLimit = defineCalculation({
  name: 'choker-limit',
  means: 'working limit of a strap used as a choker',
  symbol: 'WLL_c',
  kind: 'working limit',
  formula: 'WLL_c = ½ WLL',
  symbols: { WLL: { meaning: 'working limit in a straight pull', kind: 'working limit', above: 0 } },
  sources: [sources['29-cfr-1918-app-ii']],
  assumptions: ['the table is for fibre-rope slings; a tag that gives the choker its own limit goes before it'],
  compute: ({ WLL }) => WLL / 2,
  worked: [
    { inputs: { WLL: '1,800 lbf' }, expected: '900 lbf', tolerance: 1e-9, source: sources['29-cfr-1918-app-ii'] },
    { inputs: { WLL: '3,700 lbf' }, expected: '1,850 lbf', tolerance: 1e-9, source: sources['29-cfr-1918-app-ii'] },
  ],
});
