import { gradeAShackleOfSize, shackleRRC271Table } from '../trade/shackle-rr-c-271-table.ts';
import { defineCalculation } from './define-calculation.ts';

const listed = shackleRRC271Table.rows.map((row) => row.size).join(', ');

export const shackleLimitGradeA = defineCalculation({
  name: 'shackle-limit-grade-a',
  means: 'working limit of a grade A shackle',
  symbol: 'WLL',
  kind: 'working limit',
  formula: 'WLL = table at D',
  symbols: { D: { meaning: 'nominal size', kind: 'diameter', above: 0 } },
  sources: [shackleRRC271Table.source],
  assumptions: ['the shackle is marked grade A; a size that is not listed has no figure, because nothing is read between rows'],
  refuse: ({ D }) => (gradeAShackleOfSize(D) === undefined ? `no row of the grade A table has this size; rows known are ${listed} in` : undefined),
  compute: ({ D }) => gradeAShackleOfSize(D)?.wll_N ?? NaN,
  worked: [
    { inputs: { D: '1/2 in' }, expected: '4,000 lbf', tolerance: 1e-9, source: shackleRRC271Table.source },
    { inputs: { D: '3/4 in' }, expected: '9,500 lbf', tolerance: 1e-9, source: shackleRRC271Table.source },
    { inputs: { D: '1 in' }, expected: '17,000 lbf', tolerance: 1e-9, source: shackleRRC271Table.source },
  ],
});
