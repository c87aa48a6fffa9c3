import { isAbove } from '../base/compare.ts';
import { deadmanByHand, deadmanThickness } from '../trade/pull-sources.ts';
import { deadmanTable as table } from '../trade/deadman-table.ts';
import { defineCalculation } from './define-calculation.ts';

const lengthFor = (F: number, HP: number, b: number): number => F / (HP * b) + table.extraLength_m;

export const deadmanLength = defineCalculation({
  name: 'deadman-length',
  means: 'length of log needed',
  symbol: 'L',
  kind: 'needed length',
  formula: 'L = F ÷ (HP × b) + 1 ft',
  symbols: {
    F: { meaning: 'pull on the buried log', kind: 'load', min: 0 },
    HP: { meaning: 'holding power on its face', kind: 'pressure', above: 0 },
    b: { meaning: 'width of its face, a log’s diameter', kind: 'diameter', above: 0 },
  },
  sources: [table.source, deadmanThickness],
  assumptions: ['one foot is added for the trench of the line'],
  compute: ({ F, HP, b }) => lengthFor(F, HP, b),
  notes: ({ F, HP, b }) => (isAbove(lengthFor(F, HP, b), 5 * b) ? ['a round log longer than 5 diameters may break: bury it deeper, pull flatter or take a thicker one'] : []),
  worked: [
    { inputs: { F: '20,000 lbf', HP: '4,000 lb/ft2', b: '1 ft' }, expected: '6 ft', tolerance: 1e-9, source: deadmanByHand },
    { inputs: { F: '9,500 lbf', HP: '950 lb/ft2', b: '2 ft' }, expected: '6 ft', tolerance: 1e-9, source: deadmanByHand },
  ],
});
