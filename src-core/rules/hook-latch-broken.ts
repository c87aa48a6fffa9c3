import { missingFact, statementOf } from '../assess/facts.ts';
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
    if (gear.head !== 'hook') return;
    const latch = statementOf(gear.block, 'latch');
    const word = latch === undefined ? undefined : wordOf(latch.values, 'latch');
    if (latch === undefined || word === undefined) return judge.cannot({ ...missingFact(gear.block, 'latch'), says: `whether the latch of \`${gear.name}\` closes is not given` }, gear.block.namePlace);
    judge.holds(word !== 'broken', () => ({ place: latch.place, message: `the latch of \`${gear.name}\` is bent or missing`, help: 'fit a new latch of its maker, or use a shackle' }));
    judge.holds(word !== 'none', () => ({ place: latch.place, severity: 'warning', message: `\`${gear.name}\` is made without a latch`, help: 'use a shackle, or a hook with a latch, wherever the line may go slack', source: 'common practice: a line that may go slack hangs in a hook that closes' }));
  },
});
