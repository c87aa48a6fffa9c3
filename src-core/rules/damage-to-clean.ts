import { damageName } from '../assess/damage-place.ts';
import { inService } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

export const damageToClean = defineRule({
  name: 'damage-to-clean',
  on: 'line',
  severity: 'information',
  summary: 'A pulled strand or flattened line can be worked back into shape.',
  why: 'a pulled strand carries nothing and catches on everything until it is worked back into the braid',
  source: 'inspection guides citing CI 2001-04 (read in a document that quotes it)',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  pulled 1 strand at 8.4 m from inboard
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  # allow damage-to-clean: worked back in on 2026-06-22
  2026-06-21  damage  pulled 1 strand at 8.4 m from inboard
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      for (const damage of piece.damages) {
        if (damage.remedy !== 'clean' || damage.notMeasured !== undefined) continue;
        judge.report({
          place: damage.fact.place,
          message: `${damageName(damage, piece)} can be worked back into shape`,
          why: damage.because,
          help: `work it back in or round; when that is done, write \`mended ${damage.fact.kind}\` with the date and the place`,
        });
      }
    }
  },
});
