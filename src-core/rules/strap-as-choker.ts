import { missingFact, statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { limitText } from './force-text.ts';
import { defineRule } from './rule.ts';

export const strapAsChoker = defineRule({
  name: 'strap-as-choker',
  on: 'gear',
  severity: 'information',
  summary: 'A strap used as a choker counts with half its limit, because what its label gives for that is not written.',
  why: 'a choker bends the strap over itself and squeezes what it holds',
  source: printSource(sources['29-cfr-1918-app-ii']),
  bad: `strap trunk {
  length  3 m
  wll     4 t
  hitch   choker
}
`,
  good: `strap trunk {
  length  3 m
  wll     4 t
  hitch   choker wll 2.4 t
}
`,
  check(gear, judge) {
    const { limit, workingLimit, hitchLimit } = gear;
    if (gear.head === 'strap' && gear.hitch === undefined) judge.cannot({ ...missingFact(gear.block, 'hitch'), says: `how \`${gear.name}\` goes round what it holds is not given`, help: 'add `hitch`: `straight` or `basket` counts whole, `choker` half' }, gear.block.namePlace);
    if (gear.hitch !== 'choker' || isUnknown(limit) || isUnknown(workingLimit)) return;
    judge.holds(hitchLimit !== undefined, () => ({
      place: statementOf(gear.block, 'hitch')!.place,
      message: `as a choker \`${gear.name}\` counts with ${limitText(workingLimit)}, half of its ${limitText(limit)}`,
      help: 'where its label gives a choker a limit of its own, write it: `hitch  choker wll` and the limit; a basket, both ends in one shackle, counts whole',
    }));
  },
});
