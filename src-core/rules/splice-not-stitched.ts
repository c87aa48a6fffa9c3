import { workedEnds, endName } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

export const spliceNotStitched = defineRule({
  name: 'splice-not-stitched',
  on: 'line',
  severity: 'information',
  summary: 'A splice of the crew\'s own is neither locked nor stitched.',
  why: 'a buried tail holds under load; shaken while slack, a slippery one can creep out unless it is locked or stitched',
  source: 'maker\'s published splicing guide, lock-stitch over 6 to 8 d from the throat',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  check(line, judge) {
    for (const { piece, end } of workedEnds(line)) {
      const { facts } = end;
      // How a maker secured a supplied end is the maker's affair.
      if (facts.supplied) continue;
      judge.holds(facts.locked || facts.stitched, () => ({
        place: facts.place,
        message: `${endName(piece, end)} is neither locked nor stitched`,
        help: 'stitch it over 6 to 8 d from the throat, and add `stitched`',
      }));
    }
  },
});
