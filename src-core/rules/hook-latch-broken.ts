import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

export const hookLatchBroken = defineRule({
  name: 'hook-latch-broken',
  on: 'gear',
  severity: 'error',
  summary: 'The latch of a hook does not close.',
  why: 'a slack line falls out of an open hook, and a hook under load then holds by its point',
  source: 'common practice: a hook whose latch is bent or missing is not used; WAC 296-304-07005(2) asks that hooks are inspected and bent ones not used',
  bad: `hook clevis {
  latch  broken
  wll    4 t
}
`,
  good: `hook clevis {
  latch  closes
  wll    4 t
}
`,
  check(gear, judge) {
    const latch = gear.head === 'hook' ? statementOf(gear.block, 'latch') : undefined;
    if (latch === undefined) return;
    judge.holds(wordOf(latch.values, 'latch') !== 'broken', () => ({ place: latch.place, message: `the latch of \`${gear.name}\` is bent or missing`, help: 'fit a new latch of its maker, or use a shackle' }));
  },
});
