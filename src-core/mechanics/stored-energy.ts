import { bowExercise, springLesson } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

export const storedEnergy = defineCalculation({
  name: 'stored-energy',
  means: 'energy stored in the stretched line',
  symbol: 'E',
  kind: 'energy',
  formula: 'E = ½ F x',
  symbols: {
    F: { meaning: 'tension', kind: 'tension', min: 0 },
    x: { meaning: 'stretch at that tension', kind: 'distance', min: 0 },
  },
  sources: [sources['elastic-energy'], sources['tb-55-1900-232-10']],
  assumptions: ['the line stretches in proportion to its tension'],
  compute: ({ F, x }) => (F * x) / 2,
  notes: () => ['the ends of a broken synthetic line travel at up to 500 mph (TB 55-1900-232-10)'],
  worked: [
    { inputs: { F: '300 N', x: '0.6 m' }, expected: '90 J', tolerance: 1e-9, source: bowExercise },
    { inputs: { F: '20 N', x: '0.1 m' }, expected: '1 J', tolerance: 1e-9, source: springLesson },
  ],
});
