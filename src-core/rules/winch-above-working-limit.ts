import { show, unitOf } from '../assess/show.ts';
import { winchWithDrum } from './example-blocks.ts';
import { winchesInUse } from './winches-in-use.ts';
import { defineRule } from './rule.ts';

export const winchAboveWorkingLimit = defineRule({
  name: 'winch-above-working-limit',
  on: 'block',
  heads: ['winch'],
  severity: 'error',
  citesRating: true,
  summary: 'The winch can pull harder than the working limit that the line\'s maker gives.',
  why: 'the working limit is the maker\'s word on what the line may be loaded with, whatever it breaks at',
  source: 'the working limit of the line, as its maker gives it',
  bad: `${winchWithDrum}
line main {
  material  HMPE
  diameter  12 mm
  length    16 m
  breaking  142 kN
  working   28 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: `${winchWithDrum}
line main {
  material  HMPE
  diameter  12 mm
  length    16 m
  breaking  142 kN
  working   45 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(block, judge, assessing) {
    for (const { winch, piece } of winchesInUse(block, assessing)) {
      const { working } = piece.line;
      if (working === undefined) continue;
      const place = winch.carries?.place ?? block.namePlace;
      judge.atMost(winch.greatestPull, working, place, (pull, limit) => ({
        place: limit.origin.from === 'written' ? limit.origin.place : place,
        message: `\`${winch.name}\` can pull ${show(pull, { careful: 'up', unit: unitOf(pull) })}, above the working limit of ${show(limit, { unit: unitOf(pull) })} of \`${piece.name}\``,
        help: 'fit a line with a higher working limit; until then load this one only where something else limits the pull',
      }));
    }
  },
});
