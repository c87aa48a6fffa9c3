import { sources } from '../trade/sources.ts';
import { standardGravity } from '../units/unit-table.ts';
import { defineCalculation } from './define-calculation.ts';

export const vehicleWeight = defineCalculation({
  name: 'vehicle-weight',
  means: 'weight',
  symbol: 'W',
  kind: 'weight',
  formula: 'W = 9.80665 N/kg × m',
  symbols: { m: { meaning: 'mass with everything aboard', kind: 'mass', above: 0 } },
  sources: [sources['nist-sp-811']],
  assumptions: ['standard gravity, 9.80665 m/s²'],
  compute: ({ m }) => m * standardGravity,
  worked: [
    { inputs: { m: '1 lb' }, expected: '4.4482216152605 N', tolerance: 1e-13, source: sources['nist-sp-811'] },
    { inputs: { m: '1 kg' }, expected: '9.80665 N', tolerance: 1e-13, source: sources['nist-sp-811'] },
  ],
});
