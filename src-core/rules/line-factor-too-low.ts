import { show, unitOf } from '../assess/show.ts';
import { isAbove, isBelow } from '../base/compare.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { winchWithDrum } from './example-blocks.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { placeOfStrength, strengthKnown } from './weakest-place.ts';
import { winchesInUse } from './winches-in-use.ts';
import { defineRule } from './rule.ts';

export const lineFactorTooLow = defineRule({
  name: 'line-factor-too-low',
  on: 'block',
  heads: ['winch', 'repair'],
  severity: 'warning',
  summary: 'The line is stronger than the winch pulls, but by less than the factor of practice.',
  why: 'jerks, bends, wear and heat take from the line what nobody has written down; the factor is what is kept for them',
  source: 'UFC 4-159-03 (2005), table 3-7, factor 3 on new breaking strength, unless a practice block sets `line-factor`',
  bad: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    25 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: `practice "Tarn Hut supply crew" {
  line-factor  1.5 "crew rule 4: the winch stalls before the line parts"
}

${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    25 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(block, judge, assessing) {
    const f = assessing.practice.value('line-factor');
    for (const { winch, piece, repair, place, after } of winchesInUse(block, assessing)) {
      const { strength, unless } = strengthKnown(piece);
      const { greatestPull } = winch;
      // Weaker than the winch itself is another rule's word.
      if (!isUnknown(strength) && !isUnknown(greatestPull) && isBelow(strength.amount.low, greatestPull.amount.high)) continue;
      judge.atMost(greatestPull, asGiven(workingLimitFromBreaking({ MBL: strength, f })), place, (pull, limit) => {
        const weak = isUnknown(strength) ? undefined : placeOfStrength(piece, strength);
        return {
          place: repair?.place ?? weak?.place ?? place,
          message: `\`${winch.name}\` can pull ${show(pull, { careful: 'up' })}, above ${unless !== undefined ? '' : isAbove(pull.amount.high, limit.amount.high) ? 'the ' : 'the low end of the '}${show(limit, { unit: unitOf(pull) })}${unless === undefined ? ' that' : ', the most that'} a factor of ${isUnknown(f) ? 'practice' : show(f)} leaves of \`${piece.name}\`${after}`,
          help: `fit a stronger line, or double the line so that each part carries less; where the shop works to another factor, write \`line-factor\` with its reason in a \`practice\` block`,
          source: sourceOfLimit(f),
        };
      }, unless);
    }
  },
});
