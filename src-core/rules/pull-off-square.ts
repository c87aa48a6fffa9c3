import { maybeFact, statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';
import { sourceOfLimit } from './side-by-side.ts';

export const pullOffSquare = defineRule({
  name: 'pull-off-square',
  on: 'pull',
  severity: 'warning',
  summary: 'The line reaches the winch at more of an angle than spools evenly.',
  why: 'line that comes on at an angle piles up at one flange: it jams there, climbs over, or falls into a loop that is cut by the next wrap',
  source: 'wire rope users\' manual, fleet angle at most 1.5° on a smooth drum, as reprinted, unless a practice block says otherwise',
  bad: pullExample({ pull: `${pullWith({})}  off-square  10 deg\n` }),
  good: pullExample({ pull: `${pullWith({})}  off-square  1 deg\n` }),
  check(pull, judge, assessing) {
    const angle = maybeFact(pull.block, 'off-square', 'angle');
    const statement = statementOf(pull.block, 'off-square');
    if (angle === undefined || statement === undefined) return;
    const most = assessing.practice.value('fleet-angle-most');
    judge.atMost(angle, most, statement.place, (is, limit) => ({
      place: statement.place,
      message: `\`${pull.name}\` comes on to the drum ${show(is)} off square, above the ${show(limit, { unit: unitOf(is), careful: 'down' })} at which line spools evenly`,
      help: 'turn the vehicle towards the pull, or lead the line square over a block; stop and respool when it piles',
      source: sourceOfLimit(most),
    }));
  },
});
