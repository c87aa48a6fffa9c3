import { bowExercise, energyOfMotion } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const recoilSpeed = defineCalculation({
  name: 'recoil-speed',
  means: 'highest speed that the stored energy can give what flies',
  symbol: 'v',
  kind: 'speed',
  formula: 'v = √(2 E / m)',
  symbols: {
    E: { meaning: 'energy stored', kind: 'energy', min: 0 },
    m: { meaning: 'mass that flies, line and fittings', kind: 'mass', above: 0 },
  },
  sources: [energyOfMotion, sources['tb-55-1900-232-10']],
  assumptions: ['all of the energy goes into motion; air and friction take some of it'],
  compute: ({ E, m }) => Math.sqrt((2 * E) / m),
  worked: [{ inputs: { E: '90 J', m: '30 g' }, expected: '77.46 m/s', tolerance: 1e-4, source: bowExercise }],
});
