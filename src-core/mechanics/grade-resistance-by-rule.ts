import { recoverySchool, winchAnswers } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const gradeResistanceByRule = defineCalculation({
  name: 'grade-resistance-by-rule',
  means: 'resistance of the slope by the field rule',
  symbol: 'R_g',
  kind: 'resistance',
  formula: 'R_g = W × α ÷ 60 deg',
  symbols: {
    W: { meaning: 'weight of the vehicle', kind: 'weight', min: 0 },
    α: { meaning: 'angle of the slope, uphill', kind: 'angle', min: 0, max: 45 * degree },
  },
  sources: [sources['winching-guide-p8'], winchAnswers],
  assumptions: ['a rule for the head: below 30° it is a little under the sine, above it is over'],
  compute: ({ W, α }) => (W * α) / (60 * degree),
  worked: [
    { inputs: { W: '5,700 lbf', α: '15 deg' }, expected: '1,425 lbf', tolerance: 1e-9, source: recoverySchool },
    { inputs: { W: '5,000 lbf', α: '30 deg' }, expected: '2,500 lbf', tolerance: 1e-9, source: winchAnswers },
  ],
});
