import { statementOf } from '../assess/facts.ts';
import { standards } from '../vocabulary/blocks/gear.ts';
import { limitText, sourceOf } from './force-text.ts';
import { defineRule } from './rule.ts';

export const ratingAboveTable = defineRule({
  name: 'rating-above-table',
  on: 'gear',
  severity: 'warning',
  summary: 'A working limit is above what the standard gives for the size.',
  why: 'a figure far above the table is often the breaking strength, read as the limit',
  source: 'the table of the standard that the shackle is made to',
  bad: `shackle bow-19 {
  form     bow
  body     19 mm
  pin      22 mm
  wll      28 t
  made-to  AS-2741
}
`,
  good: `shackle bow-19 {
  form     bow
  body     19 mm
  pin      22 mm
  wll      4.7 t
  made-to  AS-2741
}
`,
  check(gear, judge) {
    const written = gear.limitFrom === 'written' ? statementOf(gear.block, 'wll') : undefined;
    if (gear.tableLimit === undefined || written === undefined) return;
    judge.atMost(gear.limit, gear.tableLimit, written.place, (limit, table) => {
      const far = limit.amount.low >= 2 * table.amount.high;
      return {
        place: written.place,
        message: `working limit of \`${gear.name}\` is ${limitText(limit)}, above the ${limitText(table)} that ${standards[gear.standard as keyof typeof standards]} gives for its body`,
        help: far ? 'read the marking again: this looks like its breaking strength; if it is, write it as `breaking`' : 'read the marking again, or correct `made-to`',
        source: sourceOf(table),
      };
    });
  },
});
