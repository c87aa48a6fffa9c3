import { isAbove } from '../base/compare.ts';
import { show } from '../assess/show.ts';
import { asGiven, isUnknown, type Given } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { winchUnit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const fewerPartsThanEstimate = defineRule({
  name: 'fewer-parts-than-estimate',
  on: 'pull',
  severity: 'warning',
  summary: 'The army\'s estimate asks for more parts of line than are rigged.',
  why: 'two ways to the same answer disagree, so the pull is near what the winch has',
  source: 'US Army lesson 63H34F01 (after FM 9-43-2); TB 9-2350-292-10',
  bad: pullExample({
    pull: pullWith({ resistance: 'resistance  62 kN "load cell"', via: 'via       snatch fixed on larch', reach: 'reach     12 m' }),
    chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`,
    more: `block snatch {
  bearing     roller
  efficiency  98 %
  wll         9 t
}
`,
  }),
  good: pullExample(),
  check(pull, judge) {
    const { army, needed, available } = pull;
    if (isUnknown(army)) return judge.cannot(army.unknown, pull.block.namePlace);
    // Where our own numbers say no already, the estimate adds nothing.
    if (isUnknown(needed) || isUnknown(available) || isAbove(needed.amount.high, available.amount.low)) return;
    const parts = pull.rigging.parts.filter((part) => part.crosses).length;
    judge.holds(army.answer.parts <= parts, () => ({
      place: pull.block.namePlace,
      message: `\`${pull.name}\` is rigged with ${parts === 1 ? '1 part' : `${parts} parts`} of line; the army's estimate asks for ${army.answer.parts}, with ${show(asGiven(army.answer.fallLineForce) as Given, { unit: winchUnit(pull) })} on the winch`,
      help: 'lead the line over one block more, or measure the resistance and write `resistance`',
    }));
  },
});
