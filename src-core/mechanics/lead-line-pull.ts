import { pipelineHandbook, wireRopeUsers } from '../trade/pull-sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const leadLinePull = defineCalculation({
  name: 'lead-line-pull',
  means: 'pull needed on the line to the winch',
  symbol: 'T',
  kind: 'tension',
  formula: 'T = R ÷ MA',
  symbols: {
    R: { meaning: 'resistance of the load', kind: 'resistance', min: 0 },
    MA: { meaning: 'advantage of the rigging, friction counted', kind: 'count', above: 0 },
  },
  sources: [pipelineHandbook, wireRopeUsers],
  compute: ({ R, MA }) => R / MA,
  worked: [
    { inputs: { R: '3,250 lbf', MA: '3.25' }, expected: '1,000 lbf', tolerance: 1e-9, source: pipelineHandbook },
    { inputs: { R: '6,000 lbf', MA: '4' }, expected: '1,500 lbf', tolerance: 1e-9, source: wireRopeUsers },
  ],
});
