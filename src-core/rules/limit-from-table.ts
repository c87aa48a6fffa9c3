import { statementOf } from '../assess/facts.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { standards } from '../vocabulary/blocks/gear.ts';
import { limitText, sourceOf } from './force-text.ts';
import { defineRule } from './rule.ts';

export const limitFromTable = defineRule({
  name: 'limit-from-table',
  on: 'gear',
  severity: 'information',
  summary: 'The working limit of a shackle is read from a table and not from the shackle.',
  why: 'the table speaks of a shackle as it was made; the marking speaks of this one',
  source: 'the table of the standard that the shackle is made to',
  bad: `shackle bow-19 {
  form     bow
  body     19 mm
  pin      22 mm
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
    const { limit } = gear;
    if (gear.limitFrom !== 'table' || isUnknown(limit)) return;
    judge.holds(false, () => ({
      place: statementOf(gear.block, 'made-to')!.place,
      message: `working limit of \`${gear.name}\` is taken as ${limitText(limit)}, from the table of ${standards[gear.standard as keyof typeof standards]} for a body of ${showValue(gear.body!)}`,
      help: 'add `wll` from the marking on it',
      source: sourceOf(limit),
    }));
  },
});
