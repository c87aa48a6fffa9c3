import { isAbove } from '../base/compare.ts';
import { show, showValue, unitOf } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { reachPlace } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const wrapsLostAtReach = defineRule({
  name: 'wraps-lost-at-reach',
  on: 'pull',
  severity: 'error',
  summary: 'A pull reaches so far that fewer wraps stay on the drum than are to be kept.',
  why: 'the kept wraps hold the line by friction; its fastening at the drum does not hold a pull',
  source: 'the wraps that the file keeps; Alberta OHS Code 2009 s. 299(2)',
  bad: pullExample({ pull: pullWith({ reach: 'reach     29 m' }) }),
  good: pullExample(),
  check(pull, judge) {
    const { winch, reach } = pull;
    if (winch === undefined) return judge.cannot(pull.winchCause!, pull.block.headPlace);
    // Where there is not line enough at all, that is said, and not its wraps.
    if (!isUnknown(reach.lineOut) && !isUnknown(winch.length) && isAbove(reach.lineOut.amount.high, winch.length.amount.low)) return;
    const place = reachPlace(pull);
    judge.atMost(reach.lineOut, asGiven(winch.usable), place, (out, usable) => ({
      place,
      message: `\`${pull.name}\` takes ${show(out, { unit: unitOf(reach.reach) })} of line; ${show(usable, { unit: unitOf(reach.reach), careful: 'down' })} are usable while \`${winch.name}\` keeps ${showValue(winch.keep)} wraps`,
      help: 'put an extension between, or start nearer',
    }));
  },
});
