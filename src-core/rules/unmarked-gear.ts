import { missingFact, statementOf } from '../assess/facts.ts';
import { markedOrNotUsed, slingMarked } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { bow22 } from './example-blocks.ts';
import { limitText } from './force-text.ts';
import { defineRule } from './rule.ts';

export const unmarkedGear = defineRule({
  name: 'unmarked-gear',
  on: 'gear',
  severity: 'warning',
  summary: 'The rating of a piece of gear cannot be read on it.',
  why: 'whoever picks it up next cannot tell what it takes',
  source: printSource(markedOrNotUsed),
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  marking  faded
}
`,
  good: `${bow22.slice(0, -2)}  marking  legible
}
`,
  check(gear, judge) {
    if (gear.limitFrom === 'none') return;
    const source = gear.head === 'shackle' ? markedOrNotUsed : gear.head === 'strap' ? slingMarked : undefined;
    // Asked once for all of it: a line for each shackle would be read by nobody.
    if (source !== undefined && gear.marking === undefined) {
      judge.cannot({ ...missingFact(gear.block, 'marking'), ...(gear.block.brokenHeads.has('marking') || statementOf(gear.block, 'marking') !== undefined ? {} : { key: 'markings', says: 'whether the rating can still be read on every shackle and strap is not given', help: 'read them, and add `marking  legible` to each on which it can be read' }) }, gear.block.namePlace);
      return;
    }
    judge.holds(!gear.unmarked, () => ({
      place: statementOf(gear.block, 'marking')!.place,
      severity: source === undefined ? 'warning' : 'error',
      message: `${gear.marking === 'faded' ? `the marking of \`${gear.name}\` cannot be read` : `\`${gear.name}\` carries no marking`}; its working limit of ${limitText(gear.workingLimit)} stands in this file only`,
      help: gear.head === 'strap' ? 'have its maker label it again, or take it out of use' : 'have it marked again by somebody who can prove its rating, or take it out of use',
      source: source === undefined ? 'common practice: gear whose rating cannot be read is not used' : printSource(source),
    }));
  },
});
