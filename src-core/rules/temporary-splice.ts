import { allEnds, endName } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { daysIn, timeSince } from '../assess/time-since.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printDay } from '../model/day.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const temporarySplice = defineRule({
  name: 'temporary-splice',
  on: 'line',
  severity: 'information',
  summary: 'A temporary splice is on the line, and falls due on a day.',
  why: 'a short splice made in the field is made again in full, so that it does not become the lasting one',
  source: 'our own careful choice, because a repair nobody dates is a repair nobody ends',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched temporary
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
  check(line, judge, assessing) {
    const life = assessing.practice.value('temporary-life');
    if (isUnknown(life)) return;
    for (const { piece, end } of allEnds(line)) {
      const { temporary, supplied, day, place } = end.facts;
      if (!temporary || supplied) continue;
      // Once overdue, the other rule speaks.
      if (day !== undefined && isAbove(timeSince(day, assessing.day, place).amount.high, life.amount.low)) continue;
      const due = day === undefined ? `falls due ${show(life, { careful: 'down' })} after it is made` : `falls due on ${printDay(day + daysIn(life))}`;
      judge.report({
        place,
        message: `${endName(piece, end)} is temporary and ${due}`,
        help: 'make it again in full before then, and write the cut and the splice with their dates',
        source: sourceOfLimit(life),
      });
    }
  },
});
