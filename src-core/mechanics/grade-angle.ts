import { rightTriangle, winchingGuideGrades } from '../trade/pull-sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const gradeAngle = defineCalculation({
  name: 'grade-angle',
  means: 'angle of the slope',
  symbol: 'α',
  kind: 'angle',
  formula: 'α = arctan G',
  symbols: { G: { meaning: 'grade, rise over run', kind: 'needed share', min: 0, max: 100 } },
  sources: [rightTriangle, winchingGuideGrades],
  compute: ({ G }) => Math.atan(G),
  worked: [
    { inputs: { G: '20 %' }, expected: '11 deg', tolerance: 0.03, source: winchingGuideGrades },
    { inputs: { G: '40 %' }, expected: '22 deg', tolerance: 0.011, source: winchingGuideGrades },
    { inputs: { G: '60 %' }, expected: '31 deg', tolerance: 0.01, source: winchingGuideGrades },
    { inputs: { G: '80 %' }, expected: '39 deg', tolerance: 0.01, source: winchingGuideGrades },
    { inputs: { G: '100 %' }, expected: '45 deg', tolerance: 1e-9, source: winchingGuideGrades },
  ],
});
