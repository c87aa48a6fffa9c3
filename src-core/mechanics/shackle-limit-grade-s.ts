import { gradeSShackleOfBody, shackleGradeSTable } from '../trade/shackle-grade-s-table.ts';
import { defineCalculation } from './define-calculation.ts';

const listed = shackleGradeSTable.rows.map((row) => `${Math.round(row.body_m * 1000)}`).join(', ');

export const shackleLimitGradeS = defineCalculation({
  name: 'shackle-limit-grade-s',
  means: 'working limit of a grade S shackle',
  symbol: 'WLL',
  kind: 'working limit',
  formula: 'WLL = table at D',
  symbols: { D: { meaning: 'body diameter', kind: 'diameter', above: 0 } },
  sources: [shackleGradeSTable.source],
  assumptions: ['the shackle is marked grade S; a size that is not listed has no figure, because nothing is read between rows'],
  refuse: ({ D }) => (gradeSShackleOfBody(D) === undefined ? `no row of the grade S table has this body; rows known are ${listed} mm` : undefined),
  compute: ({ D }) => gradeSShackleOfBody(D)?.wll_N ?? NaN,
  worked: [
    { inputs: { D: '6 mm' }, expected: '500 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
    { inputs: { D: '10 mm' }, expected: '1,000 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
    { inputs: { D: '11 mm' }, expected: '1,500 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
    { inputs: { D: '13 mm' }, expected: '2,000 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
    { inputs: { D: '19 mm' }, expected: '4,700 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
    { inputs: { D: '25 mm' }, expected: '8,500 kgf', tolerance: 1e-9, source: shackleGradeSTable.source },
  ],
});
