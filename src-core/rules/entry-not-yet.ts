import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

/** What would count against the line, were its date not later. */
const badNews: ReadonlySet<string> = new Set(['damage', 'heated', 'retired', 'pulled']);

export const entryNotYet = defineRule({
  name: 'entry-not-yet',
  on: 'block',
  heads: ['line'],
  severity: 'information',
  summary: 'A logbook entry is later than the day that is judged, so it does not count.',
  why: 'damage under a wrong date would be passed over as something that has not happened yet',
  source: 'our own careful choice, because what is passed over is said',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-04-02  fitted
  2062-06-21  inspected
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-04-02  fitted
  2026-06-21  inspected
}
`,
  check(block, judge, assessing) {
    const later = block.statements.filter((s) => s.day !== undefined && assessing.day < s.day);
    const [first] = later;
    if (first === undefined) return;
    const bad = later.some((s) => badNews.has(s.definition.head));
    judge.report({
      place: first.dayPlace!,
      severity: bad ? 'warning' : 'information',
      message: `${later.length === 1 ? `entry of ${printDay(first.day!)} is` : `${later.length} entries from ${printDay(first.day!)} on are`} after ${printDay(assessing.day)}, the day that is judged, and not counted`,
      help: 'correct the date, or judge the file for a later day',
      related: later.slice(1).map((s) => ({ place: s.dayPlace!, message: 'not counted either' })),
    });
  },
});
