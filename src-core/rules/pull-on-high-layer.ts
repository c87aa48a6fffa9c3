import { leastLineOut } from '../assess/least-line-out.ts';
import { show } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { estimateSeverity, winchUnit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const pullOnHighLayer = defineRule({
  name: 'pull-on-high-layer',
  on: 'pull',
  severity: 'error',
  summary: 'On the layer in use the winch has less than the pull needs; on its first layer it has enough.',
  why: 'every layer on the drum makes the lever longer and the pull smaller',
  source: 'SAE J706, rated line pull on the first layer; US Army TM 9-2320-430-10, WP 0082 table 1',
  citesRating: true,
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  38 kN "load cell"' }) }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  check(pull, judge) {
    const { winch, needed, available, layer } = pull;
    if (winch === undefined) return judge.cannot(pull.winchCause!, pull.block.headPlace);
    if (!isUnknown(needed) && !isUnknown(winch.greatestPull) && isAbove(needed.amount.high, winch.greatestPull.amount.low)) return;
    const place = pull.block.namePlace;
    const unit = winchUnit(pull);
    judge.atLeast(available, needed, place, (has, needs) => {
      const out = leastLineOut(winch, needs);
      const enough = isUnknown(out) ? '' : `, ${show(out)} of it`;
      return {
        place,
        severity: estimateSeverity(needs, has),
        message: `\`${pull.name}\` needs a line pull of ${show(needs, { unit })}, above the ${show(has, { unit })} that \`${winch.name}\` has on layer ${isUnknown(layer) ? '?' : show(layer)}`,
        help: `start with more line out${enough}, or double the line over a block`,
      };
    }, pull.incomplete);
  },
});
