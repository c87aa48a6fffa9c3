import { offSquareOf } from '../assess/off-square.ts';
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
    const { angle, place, from } = offSquareOf(pull);
    if (angle === undefined) return;
    const most = assessing.practice.value('fleet-angle-most');
    judge.atMost(angle, most, place, (is, limit) => ({
      place,
      message: `\`${pull.name}\` comes on to the drum ${show(is)} off square${from === 'places' ? ', by the places that are given' : ''}, above the ${show(limit, { unit: unitOf(is), careful: 'down' })} at which line spools evenly`,
      help: `turn the vehicle towards the pull, or lead the line square over a block; stop and respool when it piles${from === 'places' ? '. Where the drum is not square to the way the load goes, write `off-square`' : ''}`,
      source: sourceOfLimit(most),
    }));
  },
});
