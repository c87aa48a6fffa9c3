import type { AssessedPull } from '../assess/assess-pull.ts';
import { show } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { estimateSeverity, lessResistance, winchUnit } from './pull-text.ts';
import { defineRule } from './rule.ts';

/** Parts of the line wider apart than this lose more than an eighth of their pull. */
const wide = (60 * Math.PI) / 180;

function morePull({ army, rigging }: AssessedPull): string {
  const parts = rigging.parts.filter((part) => part.crosses).length;
  if (rigging.blocks.some(({ doubles, angle }) => doubles && !isUnknown(angle) && isAbove(angle.amount.low, wide))) return 'lead the parts of the line closer together';
  const asked = isUnknown(army) || army.answer.parts <= parts ? '' : `: the army's estimate asks for ${army.answer.parts} parts`;
  return `${parts > 1 ? 'rig one more part of line' : 'double the line over a block'}${asked}`;
}

export const winchTooWeakForPull = defineRule({
  name: 'winch-too-weak-for-pull',
  on: 'pull',
  severity: 'error',
  summary: 'A pull asks more of the winch than it has even on its first layer.',
  why: 'a winch that stalls heats its motor and its line, and holds the load where nobody planned to have it',
  source: 'the winch\'s rated line pull; resistance by the tables behind the numbers (hover shows each)',
  citesRating: true,
  bad: pullExample({ pull: pullWith({ mired: 'mired     to-hubs' }) }),
  good: pullExample(),
  check(pull, judge) {
    const { winch, needed } = pull;
    if (winch === undefined) return judge.cannot(pull.winchCause!, pull.block.headPlace);
    const place = pull.block.namePlace;
    const unit = winchUnit(pull);
    // On the layer in use it may have less: that is judged by itself.
    judge.atLeast(winch.greatestPull, needed, place, (has, needs) => ({
      place,
      severity: estimateSeverity(needs, has),
      message: `\`${pull.name}\` needs a line pull of ${show(needs, { unit })}, above the ${show(has, { unit })} of \`${winch.name}\``,
      help: `${lessResistance}, or ${morePull(pull)}`,
    }), pull.incomplete);
    // Whatever the resistance lacks is asked for together: one question after the other reads as if each were the last.
    const { weight, ground, slope, mire, drag, incomplete } = pull.resistance;
    if (incomplete === undefined || isUnknown(weight)) return;
    for (const part of [ground, slope, mire, drag]) if (isUnknown(part) && part.unknown.key !== incomplete.key) judge.cannot(part.unknown, place);
  },
});
