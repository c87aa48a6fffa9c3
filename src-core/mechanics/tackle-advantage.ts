import { pipelineHandbook, riggersHandbook } from '../trade/pull-sources.ts';
import { defineCalculation } from './define-calculation.ts';

/** What n parts pull when each part behind a further sheave keeps the share e of the one before. */
export const advantageOf = (parts: number, efficiency: number): number => {
  let sum = 0;
  for (let i = 1; i <= parts; i++) sum += efficiency ** i;
  return sum;
};

export const tackleAdvantage = defineCalculation({
  name: 'tackle-advantage',
  means: 'advantage of a tackle with friction',
  symbol: 'MA',
  kind: 'count',
  formula: 'MA = E (1 − E^n) ÷ (1 − E)',
  symbols: {
    n: { meaning: 'parts that pull on the load', kind: 'count', min: 1, max: 100, whole: true },
    E: { meaning: 'share of the tension that passes a sheave', kind: 'share', above: 0, max: 1 },
  },
  sources: [pipelineHandbook, riggersHandbook],
  assumptions: ['the line leaves the standing block straight to the winch, so that every part stands behind one sheave more than the part before'],
  compute: ({ n, E }) => advantageOf(n, E),
  worked: [
    { inputs: { n: '4', E: '91.7 %' }, expected: '3.25', tolerance: 0.005, source: pipelineHandbook },
    { inputs: { n: '2', E: '95.6938 %' }, expected: '1.87', tolerance: 0.005, source: riggersHandbook },
    { inputs: { n: '12', E: '95.6938 %' }, expected: '9.11', tolerance: 0.005, source: riggersHandbook },
    { inputs: { n: '12', E: '98.0392 %' }, expected: '10.6', tolerance: 0.005, source: riggersHandbook },
  ],
});
