import { statementOf } from '../assess/facts.ts';
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
  good: bow22,
  check(gear, judge) {
    if (gear.limitFrom === 'none') return;
    const source = gear.head === 'shackle' ? markedOrNotUsed : gear.head === 'strap' ? slingMarked : undefined;
    judge.holds(!gear.unmarked, () => ({
      place: statementOf(gear.block, 'marking')!.place,
      severity: source === undefined ? 'warning' : 'error',
      message: `${gear.marking === 'faded' ? `the marking of \`${gear.name}\` cannot be read` : `\`${gear.name}\` carries no marking`}; its working limit of ${limitText(gear.workingLimit)} stands in this file only`,
      help: gear.head === 'strap' ? 'have its maker label it again, or take it out of use' : 'have it marked again by somebody who can prove its rating, or take it out of use',
      source: source === undefined ? 'common practice: gear whose rating cannot be read is not used' : printSource(source),
    }));
  },
});
