import { recoverySchool } from '../trade/pull-sources.ts';
import { mireNamed } from '../trade/mire-factor.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

/** How many times its weight a vehicle resists when mired this deep: `wheels`, `hubs`, `fenders`, `frame`, `cab`. */
export function mireFactor(depth: string): Value {
  const row = mireNamed(depth);
  if (row === undefined) return noFigure(`mired to ${depth}`, `no source gives the resistance of a vehicle mired to \`${depth}\``, 'write the resistance as a share of the weight');
  return tableValue(row.factor, row.factor, 'needed share', row.source, 'write the resistance as a share of the weight');
}

export const mireResistance = defineCalculation({
  name: 'mire-resistance',
  means: 'resistance of the mire',
  symbol: 'R_m',
  kind: 'resistance',
  formula: 'R_m = k W',
  symbols: {
    W: { meaning: 'weight of the vehicle', kind: 'weight', min: 0 },
    k: { meaning: 'mire factor, in shares of the weight', kind: 'needed share', min: 0, max: 5 },
  },
  sources: [sources['fm-20-22-mire'], sources['fire-service-mire']],
  assumptions: ['digging out and breaking the suction lower it; nothing here counts on that'],
  compute: ({ W, k }) => k * W,
  worked: [{ inputs: { W: '5,700 lbf', k: '150 %' }, expected: '8,550 lbf', tolerance: 1e-9, source: recoverySchool }],
});
