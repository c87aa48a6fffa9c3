import { deadmanByHand } from '../trade/pull-sources.ts';
import { deadmanTable as table } from '../trade/deadman-table.ts';
import { defineCalculation } from './define-calculation.ts';

export const deadmanHold = defineCalculation({
  name: 'deadman-hold',
  means: 'holding power of a buried log',
  symbol: 'F',
  kind: 'holding power',
  formula: 'F = HP × b × (L − 1 ft)',
  symbols: {
    HP: { meaning: 'holding power on its face', kind: 'pressure', above: 0 },
    b: { meaning: 'width of its face, a log’s diameter', kind: 'diameter', above: 0 },
    L: { meaning: 'length of the log that counts', kind: 'usable length', above: table.extraLength_m },
  },
  sources: [table.source],
  assumptions: ['one foot of the length is lost to the trench of the line'],
  compute: ({ HP, b, L }) => HP * b * (L - table.extraLength_m),
  worked: [{ inputs: { HP: '4,000 lb/ft2', b: '1 ft', L: '6 ft' }, expected: '20,000 lbf', tolerance: 1e-9, source: deadmanByHand }],
});
