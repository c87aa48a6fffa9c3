import { ownNoBuoyancy, waterWeight } from '../trade/pull-sources.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';
import { defineCalculation } from './define-calculation.ts';

const waterWeight_N_m3 = toSI(62.4, unitNamed('lbf')!) / toSI(1, unitNamed('ft')!) ** 3;

export const waterLoad = defineCalculation({
  name: 'water-load',
  means: 'weight of the water held inside',
  symbol: 'W_w',
  kind: 'weight',
  formula: 'W_w = 62.4 lb/ft³ × A × h',
  symbols: {
    A: { meaning: 'floor area that holds water', kind: 'area', min: 0 },
    h: { meaning: 'depth of the water inside', kind: 'distance', min: 0 },
  },
  sources: [waterWeight, ownNoBuoyancy],
  assumptions: ['the water comes out with the vehicle: it counts as weight on every slope until it has drained', 'buoyancy is not counted'],
  compute: ({ A, h }) => waterWeight_N_m3 * A * h,
  worked: [{ inputs: { A: '1 ft2', h: '1 ft' }, expected: '62.4 lbf', tolerance: 1e-9, source: waterWeight }],
});
