import { allEnds, endName } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { eyeLoopAroundThimble } from '../mechanics/eye-loop-around-thimble.ts';
import { buryInDiameters } from '../mechanics/bury-in-diameters.ts';
import { asWritten, limitBeside } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const eyeTooTight = defineRule({
  name: 'eye-too-tight',
  on: 'line',
  severity: 'warning',
  summary: 'The eye is too small for anything as thick as its own line.',
  why: 'so small an eye bends the line sharper than round itself, and no pin that holds goes through it',
  source: 'our own careful choice, because round anything thinner than itself a line keeps no published strength',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye bury 72 d taper 24 d size 50 mm
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye bury 72 d taper 24 d size 150 mm
}
`,
  check(line, judge) {
    const { diameter } = line.facts;
    for (const { piece, end, buried } of allEnds(line)) {
      const written = end.facts.size;
      if (written === undefined) continue;
      const least = asGiven(eyeLoopAroundThimble({ D: diameter, d: diameter }), 'needed length');
      judge.atLeast(buried.eyeLoop, least, written.place, (_, needed) => ({
        place: written.place,
        message: `line around ${endName(piece, end)} is ${asWritten(written)}, below the ${limitBeside(written, needed, asGiven(buryInDiameters({ T: isUnknown(least) ? least : { ...least, kind: 'length' }, d: diameter }), 'needed diameters'))} around a pin as thick as the line`,
        help: `make the eye larger: ${show(needed, { careful: 'up' })} is the least that goes round such a pin; \`size\` counts throat to throat`,
      }));
    }
  },
});
