import { isWire } from '../model/line-make.ts';
import { checkUpkeep } from './upkeep.ts';
import { defineRule } from './rule.ts';

export const washingOverdue = defineRule({
  name: 'washing-overdue',
  on: 'block',
  heads: ['line'],
  severity: 'information',
  summary: 'A line has not been washed for longer than practice allows.',
  why: 'grit that has worked its way in cuts the fibres from inside each time the line is loaded',
  source: 'our own careful choice, because grit cannot be seen from outside; a practice block sets `washing-interval`',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
  2025-06-21  washed
  2026-06-21  inspected
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
  2026-05-14  washed
  2026-06-21  inspected
}
`,
  // Water takes the grease out of wire.
  check: (block, judge, assessing) => isWire(block) ? undefined : checkUpkeep(block, judge, assessing, { entry: 'washed', interval: 'washing-interval', help: 'wash it in clean water, let it dry in the shade, and write `washed` with the date' }),
});
