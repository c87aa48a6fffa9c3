import { inService } from '../assess/ends.ts';
import { showValue } from '../assess/show.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const knotInLine = defineRule({
  name: 'knot-in-line',
  on: 'line',
  severity: 'warning',
  summary: 'An end of the line is made with a knot.',
  why: 'a knot takes a large share of the strength, and in slippery fibre it slips long before the line breaks',
  source: 'sailing-press tests of knots in HMPE; Cordage Institute CI 1401-15',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  knot
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge, assessing) {
    for (const piece of inService(line)) {
      for (const end of [piece.inboard, piece.outboard]) {
        if (end.facts.form === 'unstated') continue;
        judge.holds(end.facts.form !== 'knot', () => {
          const left = assessing.practice.value('knot-strength', line.facts.material);
          return {
            place: end.facts.place,
            message: `\`${piece.name}\` ends in a knot ${end.which}, which is counted at ${showValue(left)} of the breaking strength`,
            help: 'splice an eye instead',
            source: sourceOfLimit(left),
          };
        });
      }
    }
  },
});
