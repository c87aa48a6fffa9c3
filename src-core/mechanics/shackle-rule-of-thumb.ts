import { sources } from '../trade/sources.ts';
import { standardGravity, toSI, unitNamed } from '../units/unit-table.ts';
import { defineCalculation } from './define-calculation.ts';

const inch_m = toSI(1, unitNamed('in')!);
const shortTon_N = toSI(1, unitNamed('short-ton')!) * standardGravity;

export const shackleRuleOfThumb = defineCalculation({
  name: 'shackle-rule-of-thumb',
  means: 'working limit of any shackle by the rule of thumb',
  symbol: 'SWL',
  kind: 'working limit',
  formula: 'SWL = 3 short tons × (D ÷ 1 in)²',
  symbols: { D: { meaning: 'diameter of the shackle at its side', kind: 'diameter', above: 0 } },
  sources: [sources['navedtra-14251-shackle']],
  assumptions: ['a comparison for a shackle in hand: it replaces no mark on the shackle, which shows its working limit or is not used'],
  compute: ({ D }) => 3 * (D / inch_m) ** 2 * shortTon_N,
  worked: [{ inputs: { D: '5/8 in' }, expected: '2,343.8 lbf', tolerance: 5e-5, source: sources['navedtra-14251-shackle'] }],
});
