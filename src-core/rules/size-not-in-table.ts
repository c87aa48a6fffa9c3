import { statementOf } from '../assess/facts.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { standards } from '../vocabulary/blocks/gear.ts';
import { sourceOfStandard } from './force-text.ts';
import { defineRule } from './rule.ts';

export const sizeNotInTable = defineRule({
  name: 'size-not-in-table',
  on: 'gear',
  severity: 'information',
  summary: 'The table of the standard has no row for the size of a shackle.',
  why: 'nothing is read between the rows of a table, so the limit is not known',
  source: 'the table of the standard that the shackle is made to',
  bad: `shackle bow-16 {
  form     bow
  body     16 mm
  made-to  AS-2741
}
`,
  good: `shackle bow-16 {
  form     bow
  body     16 mm
  wll      3.2 t
  made-to  AS-2741
}
`,
  check(gear, judge) {
    if (gear.limitFrom !== 'table' || gear.body === undefined || isUnknown(gear.body) || !isUnknown(gear.limit)) return;
    judge.holds(false, () => ({
      place: statementOf(gear.block, 'body')!.place,
      message: `no row of the ${standards[gear.standard as keyof typeof standards]} table here has a body of ${showValue(gear.body!)}; what \`${gear.name}\` may take is not judged`,
      help: 'add `wll` from the marking on it',
      source: sourceOfStandard(gear.standard!),
    }));
  },
});
