import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

const changesTheLine = new Set(['cut', 'splice', 'join', 'damage', 'reversed', 'pulled', 'spooled']);

export const entryBeforeFitted = defineRule({
  name: 'entry-before-fitted',
  on: 'block',
  heads: ['line'],
  severity: 'warning',
  summary: 'Something was done to a line, or with it, before it was fitted.',
  why: 'the length is the one as fitted, so work of an earlier date would be counted twice',
  source: 'our own careful choice, because one of the two dates is likely a slip',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-01  pulled  20 kN
  2026-04-02  fitted
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-02  fitted
  2026-04-02  pulled  20 kN
}
`,
  check(block, judge) {
    const fitted = block.statements.filter((s) => s.definition.head === 'fitted' && s.day !== undefined).sort((a, b) => a.day! - b.day!)[0];
    if (fitted === undefined) return;
    for (const entry of block.statements) {
      if (entry.day === undefined || !changesTheLine.has(entry.definition.head)) continue;
      judge.holds(fitted.day! <= entry.day, () => ({
        place: entry.dayPlace!,
        message: `\`${entry.definition.head}\` of ${printDay(entry.day!)} is before \`${block.name ?? 'line'}\` was fitted on ${printDay(fitted.day!)}`,
        help: 'correct one of the dates, or leave out what is contained in the length as fitted',
        related: [{ place: fitted.place, message: 'fitted here' }],
      }));
    }
  },
});
