import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { show, showLike, showValue } from '../assess/show.ts';
import { isBelow } from '../base/compare.ts';
import { exactly } from '../units/amount.ts';
import { winchWithDrum } from './example-blocks.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { winchesInUse } from './winches-in-use.ts';
import { defineRule } from './rule.ts';

export const drumOverfull = defineRule({
  name: 'drum-overfull',
  on: 'block',
  heads: ['winch', 'repair'],
  severity: 'error',
  summary: 'The line stands too near the edge of the flange, or above it, when all of it is wound on.',
  why: 'line that climbs over the flange is cut on its edge or jams beside the drum',
  source: 'geometry of the drum; common practice for the height of the flange above the line',
  bad: `winch bow-winch {
  rated    42 kN at layer 1
  barrel   64 mm
  width    230 mm
  flange   125 mm
  keep     10 wraps
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
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
    const asked = assessing.practice.value('freeboard');
    for (const { winch, piece, place, after } of winchesInUse(block, assessing)) {
      const needed = asGiven(lengthInDiameters({ k: asked, d: winch.diameter }), 'needed length');
      judge.atLeast(asGiven(winch.freeboard), needed, place, (left, limit) => {
        const above = isBelow(left.amount.low, 0);
        const fits = isUnknown(winch.capacity) ? undefined : show({ amount: winch.capacity.amount, kind: winch.capacity.kind, origin: { from: 'derived', derivation: winch.capacity } }, { careful: 'down' });
        return {
          place,
          severity: above ? 'error' : 'warning',
          message: above
            ? `\`${piece.name}\`${after} stands ${showLike(exactly(-left.amount.low), left, 'up')} above the flange of \`${winch.name}\` on layer ${showValue(asGiven(winch.outermostLayer))}`
            : `flange of \`${winch.name}\` stands ${show(left, { careful: 'down' })} above \`${piece.name}\`${after}, below the ${show(limit, { careful: 'up' })} of practice`,
          help: fits === undefined ? 'fit a thinner line' : `${above ? `at most ${fits} of this line fits` : `with at most ${fits} of this line that much is left`}: fit a shorter one, or cut it and keep the rest as an extension`,
          ...(above ? {} : { source: sourceOfLimit(asked) }),
        };
      });
    }
  },
});
