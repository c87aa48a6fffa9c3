import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

export const dateOutOfOrder = defineRule({
  name: 'date-out-of-order',
  on: 'block',
  heads: ['line'],
  severity: 'warning',
  summary: 'A logbook entry is earlier than the one above it.',
  why: 'a logbook grows downward; an earlier date below a later one is often a slip, and it changes what was cut before what',
  source: 'common practice',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-04-02  fitted
  2026-06-21  inspected
  2026-05-14  washed
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-04-02  fitted
  2026-05-14  washed
  2026-06-21  inspected
}
`,
  check(block, judge) {
    const dated = block.statements.filter((s) => s.day !== undefined);
    for (const [i, entry] of dated.entries()) {
      const above = dated[i - 1];
      if (above === undefined) continue;
      judge.holds(above.day! <= entry.day!, () => ({
        place: entry.dayPlace!,
        message: `entry of ${printDay(entry.day!)} stands below one of ${printDay(above.day!)}`,
        help: 'correct the date, or move the entry up; entries are taken in the order of their dates',
        related: [{ place: above.dayPlace!, message: 'the entry above' }],
      }));
    }
  },
});
