import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { show, showValue } from '../assess/show.ts';
import { winchWithDrum } from './example-blocks.ts';
import { winchesInUse } from './winches-in-use.ts';
import { defineRule } from './rule.ts';

export const keepWrapsLost = defineRule({
  name: 'keep-wraps-lost',
  on: 'block',
  heads: ['winch', 'repair'],
  severity: 'error',
  summary: 'The line on the drum is shorter than the wraps that must stay on it.',
  why: 'without the kept wraps the pull comes on the fastening, which is not made to hold it',
  source: 'Alberta OHS Code 2009, s. 299(2), wraps to keep; geometry of the drum',
  bad: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    2 m
}
`,
  good: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    25 m
}
`,
  check(block, judge, assessing) {
    for (const { winch, piece, repair, place, after } of winchesInUse(block, assessing)) {
      judge.atLeast(winch.length, asGiven(winch.keptLength), place, (length, kept) => ({
        place,
        message: `\`${piece.name}\` is ${show(length, { careful: 'down' })} long${after}, below the ${show(kept, { unit: isUnknown(piece.length) || piece.length.origin.from !== 'written' ? undefined : piece.length.origin.unit, careful: 'up' })} in the ${showValue(winch.keep)} wraps kept on \`${winch.name}\``,
        help: repair === undefined ? 'fit a longer line, and use this one as an extension' : 'cut nearer to the outboard end, write `drop inboard` behind the cut where the end at the drum is to go, or fit another line and keep this one as an extension',
      }));
    }
  },
});
