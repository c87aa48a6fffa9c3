import { workedEnds, endName } from '../assess/ends.ts';
import { asWritten, limitBeside, sourceOfLimit } from './side-by-side.ts';
import { lengthText } from './fix-text.ts';
import { defineRule } from './rule.ts';

export const taperTooShort = defineRule({
  name: 'taper-too-short',
  on: 'line',
  severity: 'warning',
  summary: 'The buried tail is tapered over a shorter length than the material needs.',
  why: 'a short taper makes the line step down suddenly where the tail ends, and it breaks there',
  source: 'maker\'s published instruction, 12-strand high-modulus eye splice, unless a practice block says otherwise',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 8 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 21 d
}
`,
  check(line, judge) {
    for (const { piece, end, buried } of workedEnds(line)) {
      const written = end.facts.taper;
      if (written === undefined) continue;
      judge.atLeast(buried.taper, buried.taperNeeded, written.place, (_, needed) => ({
        place: written.place,
        message: `taper of ${endName(piece, end)} is ${asWritten(written)}, below the ${limitBeside(written, needed, buried.taperNeeded_d)} for ${line.facts.material}`,
        help: `taper the last ${lengthText(needed, written)} of the tail`,
        source: sourceOfLimit(buried.taperNeeded_d),
      }));
    }
  },
});
