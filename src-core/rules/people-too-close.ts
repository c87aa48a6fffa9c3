import { show, showLike, unitOf } from '../assess/show.ts';
import { exactly } from '../units/amount.ts';
import { asGiven, isUnknown, unknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

export const peopleTooClose = defineRule({
  name: 'people-too-close',
  on: 'pull',
  severity: 'error',
  summary: 'People stand nearer than the longest line in use is long.',
  why: 'a line or a piece of gear that lets go flies as far as the line is long, faster than anybody steps aside',
  source: 'US Army TM 9-2320-356-BD, everybody farther off than the longest line in use',
  bad: pullExample({ pull: pullWith({ people: 'people    12 m' }) }),
  good: pullExample(),
  check(pull, judge) {
    const { name, people, block } = pull;
    const standOff = asGiven(pull.standOffAtLeast);
    const say = isUnknown(standOff) ? '' : `; the longest line in use is ${showLike(exactly(standOff.amount.high), standOff, 'up')}${isUnknown(pull.standOff) ? ' or more' : ''}`;
    const distance = people ?? unknown({ key: `people of ${name}`, says: `how far off people keep in \`${name}\` is not given${say}`, help: 'add `people` with the least distance of everybody who does not run the winch', place: block.namePlace });
    const place = isUnknown(distance) || distance.origin.from !== 'written' ? block.namePlace : distance.origin.place;
    judge.atLeast(distance, standOff, place, (has, least) => ({
      place,
      message: `people of \`${name}\` keep ${show(has, { careful: 'down' })} off, below the ${showLike(exactly(least.amount.high), least, 'up', unitOf(has))} of the longest line in use`,
      help: 'send everybody who does not run the winch farther off, in every direction',
    }), isUnknown(pull.standOff) ? pull.standOff.unknown : undefined);
  },
});
