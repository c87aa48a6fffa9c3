import { checkUpkeep } from './upkeep.ts';
import { defineRule } from './rule.ts';

export const inspectionOverdue = defineRule({
  name: 'inspection-overdue',
  on: 'block',
  heads: ['line'],
  severity: 'warning',
  summary: 'A line has not been inspected for longer than practice allows.',
  why: 'cuts and wear are found by looking and feeling along the whole line, and nothing else tells of them',
  source: 'our own careful choice, because wear shows within a season; a practice block sets `inspection-interval`',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
  2025-06-21  inspected
  2026-06-01  washed
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
  2026-06-01  washed
  2026-06-21  inspected
}
`,
  check: (block, judge, assessing) => checkUpkeep(block, judge, assessing, { entry: 'inspected', interval: 'inspection-interval', help: 'run it out, look and feel along all of it, and write `inspected` with the date' }),
});
