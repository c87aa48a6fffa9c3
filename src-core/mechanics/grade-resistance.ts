import { winchingGuideGrades } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;

export const gradeResistance = defineCalculation({
  name: 'grade-resistance',
  means: 'resistance of the slope',
  symbol: 'R_g',
  kind: 'resistance',
  formula: 'R_g = W sin α',
  symbols: {
    W: { meaning: 'weight of the vehicle', kind: 'weight', min: 0 },
    α: { meaning: 'angle of the slope, uphill', kind: 'angle', min: 0, max: 90 * degree },
  },
  sources: [sources.statics, winchingGuideGrades],
  assumptions: ['the pull is up the line of the slope'],
  compute: ({ W, α }) => W * Math.sin(α),
  worked: [
    { inputs: { W: '6,000 lbf', α: '31 deg' }, expected: '3,060 lbf', tolerance: 0.011, source: winchingGuideGrades },
    { inputs: { W: '100 lbf', α: '45 deg' }, expected: '71 lbf', tolerance: 0.006, source: winchingGuideGrades },
  ],
});
