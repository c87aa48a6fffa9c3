import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { estimateSeverity, lessResistance, winchUnit } from './pull-text.ts';
import { defineRule } from './rule.ts';

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
      help: `${lessResistance}, or double the line over a block${isUnknown(pull.army) ? '' : `: the army's estimate asks for ${pull.army.answer.parts} parts`}`,
    }), pull.incomplete);
    // Whatever the resistance lacks is asked for together: one question after the other reads as if each were the last.
    const { weight, ground, slope, mire, drag, incomplete } = pull.resistance;
    if (incomplete === undefined || isUnknown(weight)) return;
    for (const part of [ground, slope, mire, drag]) if (isUnknown(part) && part.unknown.key !== incomplete.key) judge.cannot(part.unknown, place);
  },
});
