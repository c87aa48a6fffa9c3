import { workedEnds, endName } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { isShortTucked } from '../assess/splice-end.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const taperMissing = defineRule({
  name: 'taper-missing',
  on: 'line',
  severity: 'warning',
  summary: 'A splice gives no taper, so its tail is counted as cut off blunt.',
  why: 'a blunt tail ends in a step, and the line breaks there: untapered eyes broke 13 to 20 % below the average',
  source: 'independent break tests of HMPE eye splices; maker\'s published instruction, 12-strand high-modulus eye splice',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge) {
    for (const { piece, end, buried } of workedEnds(line)) {
      // Of an end whose bury is not given that is asked first.
      if (buried.taperWritten || end.facts.broken || end.facts.bury === undefined) continue;
      const { place, day, supplied } = end.facts;
      if (isShortTucked(end.facts, line.facts)) {
        // What its maker says that it holds goes for the splice as it is.
        if (end.facts.holds === undefined) judge.holds(false, () => ({
          place,
          message: `taper of ${endName(piece, end)} is not given, so it counts as blunt; how long that of a short tucked splice is, its maker says`,
          help: 'taper the tail as the maker\'s instruction for this splice shows, and add `taper`',
        }));
        continue;
      }
      judge.atLeast(buried.taper, buried.taperNeeded, place, (_, needed) => {
        const wanted = isUnknown(buried.taperNeeded_d) ? show(needed, { careful: 'up' }) : show(buried.taperNeeded_d, { careful: 'up' });
        const planned = day === undefined && !supplied;
        return {
          place,
          message: `taper of ${endName(piece, end)} is not given, so it counts as blunt; ${wanted} is needed in ${line.facts.material}`,
          help: planned ? `taper the last ${show(needed, { careful: 'up' })} of the tail, and add \`taper ${wanted}\`` : 'measure the taper and add `taper`, or make the splice again',
          source: sourceOfLimit(buried.taperNeeded_d),
          fixes: planned && end.facts.bury !== undefined ? [{ title: `Add \`taper ${wanted}\``, edits: [{ place: { ...end.facts.bury.place, start: end.facts.bury.place.end }, text: ` taper ${wanted}` }] }] : [],
        };
      });
    }
  },
});
