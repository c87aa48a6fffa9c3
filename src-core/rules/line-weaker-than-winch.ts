import { show, unitOf } from '../assess/show.ts';
import { winchWithDrum } from './example-blocks.ts';
import { placeOfStrength, strengthKnown } from './weakest-place.ts';
import { winchesInUse } from './winches-in-use.ts';
import { defineRule } from './rule.ts';

export const lineWeakerThanWinch = defineRule({
  name: 'line-weaker-than-winch',
  on: 'block',
  heads: ['winch', 'repair'],
  severity: 'error',
  citesRating: true,
  summary: 'The winch can pull harder than the line on it holds.',
  why: 'a winch does not stop at the strength of its line: stalled against a load it parts the line',
  source: 'SAE J706, rated line pull of the winch, and the breaking strength of the line',
  bad: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    25 m
  breaking  40 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: `${winchWithDrum}
line main {
  material  HMPE
  diameter  12 mm
  length    16 m
  breaking  142 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(block, judge, assessing) {
    for (const { winch, piece, repair, place, after } of winchesInUse(block, assessing)) {
      const { strength, unless } = strengthKnown(piece);
      judge.atLeast(strength, winch.greatestPull, place, (held, pull) => {
        const weak = placeOfStrength(piece, pull);
        return {
          place: repair?.place ?? weak.place,
          message: `\`${piece.name}\` breaks at ${show(held, { unit: unitOf(pull) })}${weak.says}${after}, below the ${show(pull, { careful: 'up' })} that \`${winch.name}\` can pull`,
          help: repair === undefined ? 'fit a stronger line; until then load it only where something else limits the pull' : 'bury the splice in full and cut the damage out, or fit a stronger line',
        };
      }, unless);
    }
  },
});
