import { markedOrNotUsed, slingMarked } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { defineRule } from './rule.ts';

export const unratedGear = defineRule({
  name: 'unrated-gear',
  on: 'gear',
  severity: 'error',
  summary: 'Nothing says what a piece of gear may take.',
  why: 'gear of unknown strength is the weakest link of every chain it is in',
  source: printSource(markedOrNotUsed),
  bad: `ring master {
  body     16 mm
  marking  none
}
`,
  good: `ring master {
  body  16 mm
  wll   5 t
}
`,
  check(gear, judge) {
    // Where neither a mark nor a rating is spoken of, there is nothing to compare: what it may take is not known.
    if (!gear.unmarked && gear.limitFrom === 'none') return;
    judge.holds(gear.limitFrom !== 'none', () => ({
      place: gear.block.namePlace,
      message: `nothing says what \`${gear.name}\` may take: ${gear.marking === 'faded' ? 'its marking cannot be read' : 'it carries no marking'} and no rating is written`,
      help: 'take it out of use, or write `wll` from its maker\'s papers',
      source: gear.head === 'shackle' ? printSource(markedOrNotUsed) : gear.head === 'strap' ? printSource(slingMarked) : 'common practice: gear whose rating nobody knows is not used',
    }));
  },
});
