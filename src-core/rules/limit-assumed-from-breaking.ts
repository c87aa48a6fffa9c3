import { statementOf } from '../assess/facts.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { limitText, sourceOf } from './force-text.ts';
import { defineRule } from './rule.ts';

export const limitAssumedFromBreaking = defineRule({
  name: 'limit-assumed-from-breaking',
  on: 'gear',
  severity: 'information',
  summary: 'Only the breaking strength of gear is given; its working limit is that over a design factor.',
  why: 'a limit that is computed is not one that its maker answers for',
  source: 'the design factor of practice; ASME B30.26-2010, 26-1.2 for shackles, CI 1401-15 for fibre',
  bad: `soft-shackle loop-11 {
  diameter  11 mm
  breaking  140 kN
}
`,
  good: `soft-shackle loop-11 {
  diameter  11 mm
  wll       28 kN
}
`,
  check(gear, judge) {
    if (gear.limitFrom !== 'breaking strength' || isUnknown(gear.limit) || isUnknown(gear.breakingStrength)) return;
    const { limit, breakingStrength: breaking, designFactor } = gear;
    judge.holds(false, () => ({
      place: (statementOf(gear.block, 'breaking') ?? statementOf(gear.block, 'line-breaking'))!.place,
      message: `working limit of \`${gear.name}\` is taken as ${limitText(limit)}: ${gear.breakingWritten ? 'its breaking strength' : 'the breaking strength of a soft shackle of this line,'} ${gear.breakingWritten ? 'of ' : ''}${limitText(breaking)}${gear.breakingWritten ? '' : ','} over ${showValue(designFactor)}`,
      help: `add \`wll\` from ${gear.head === 'soft-shackle' || gear.head === 'strap' ? 'its label' : 'the marking on it'}`,
      source: isUnknown(designFactor) ? undefined : sourceOf(designFactor),
    }));
  },
});
