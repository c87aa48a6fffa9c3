import { snowCase, towMagazine, winchSellerGuide } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { surfaceNamed } from '../trade/surface-resistance.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Value } from './derivation.ts';
import { noFigure, tableValue } from './table-value.ts';

/** Share of the weight that a surface takes, from least to most that sources give. */
export function surfaceShare(surface: string): Value {
  const row = surfaceNamed(surface);
  if (row === undefined) return noFigure(`surface ${surface}`, `no source gives the resistance of the surface \`${surface}\``, 'write the resistance as a share of the weight');
  return tableValue(row.low, row.high, 'needed share', row.sources[0], 'write the resistance as a share of the weight');
}

export const surfaceResistance = defineCalculation({
  name: 'surface-resistance',
  means: 'resistance of the ground',
  symbol: 'R_s',
  kind: 'resistance',
  formula: 'R_s = f W',
  symbols: {
    W: { meaning: 'weight of the vehicle', kind: 'weight', min: 0 },
    f: { meaning: 'share of the weight that the surface takes', kind: 'needed share', min: 0, max: 3 },
  },
  sources: [sources['surface-fractions-read'], sources['surface-fractions'], towMagazine],
  assumptions: ['level ground, wheels that turn, tyres with air in them'],
  compute: ({ W, f }) => f * W,
  worked: [
    { inputs: { W: '4,000 lbf', f: '1/10' }, expected: '400 lbf', tolerance: 1e-9, source: towMagazine },
    { inputs: { W: '4,000 lbf', f: '1/3' }, expected: '1,320 lbf', tolerance: 0.011, source: towMagazine },
    { inputs: { W: '28,600 lbf', f: '30 %' }, expected: '8,580 lbf', tolerance: 1e-9, source: snowCase },
    { inputs: { W: '5,000 lbf', f: '30 %' }, expected: '1,500 lbf', tolerance: 1e-9, source: winchSellerGuide },
    { inputs: { W: '5,000 lbf', f: '4 %' }, expected: '200 lbf', tolerance: 1e-9, source: winchSellerGuide },
  ],
});
