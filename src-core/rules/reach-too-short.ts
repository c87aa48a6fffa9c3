import { isBelow } from '../base/compare.ts';
import { show, unitOf } from '../assess/show.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { reachPlace } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const reachTooShort = defineRule({
  name: 'reach-too-short',
  on: 'pull',
  severity: 'error',
  summary: 'A pull takes more line than there is.',
  why: 'the far end is not reached',
  source: 'arithmetic: lengths along a line add up',
  bad: pullExample({ pull: pullWith({ reach: 'reach     34 m' }) }),
  good: pullExample(),
  check(pull, judge) {
    const { winch, reach } = pull;
    if (winch === undefined) return judge.cannot(pull.winchCause!, pull.block.headPlace);
    const place = reachPlace(pull);
    judge.atMost(reach.lineOut, winch.length, place, (out, length) => ({
      place,
      severity: isBelow(out.amount.low, length.amount.high) ? 'warning' : 'error',
      message: `\`${pull.name}\` takes ${show(out, { unit: unitOf(reach.reach) })} of line; \`${pull.line?.name ?? winch.name}\` is ${show(length, { unit: unitOf(reach.reach), careful: 'down' })} long`,
      help: 'put an extension between, or start nearer',
    }));
  },
});
