import { allEnds, endName } from '../assess/ends.ts';
import { daysIn, daysText, limitInDays, timeSince } from '../assess/time-since.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printDay } from '../model/day.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const temporarySpliceOverdue = defineRule({
  name: 'temporary-splice-overdue',
  on: 'line',
  severity: 'warning',
  summary: 'A temporary splice is still in use after the time it was meant for.',
  why: 'a splice made short for the way home was never meant to be counted on for longer',
  source: 'our own careful choice, because a temporary splice must not become the lasting one; a practice block sets `temporary-life`',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-03-21  cut     at 20 m from inboard
  2026-03-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched temporary
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched temporary
}
`,
  check(line, judge, assessing) {
    const life = assessing.practice.value('temporary-life');
    for (const { piece, end } of allEnds(line)) {
      const { temporary, supplied, day, place, statement } = end.facts;
      if (!temporary || (day === undefined && !supplied)) continue;
      if (day === undefined) {
        // It was there when the line was fitted.
        const fitted = line.block.statements.find((s) => s.definition.head === 'fitted' && s.day !== undefined && s.day <= assessing.day);
        const age = fitted === undefined ? undefined : timeSince(fitted.day!, assessing.day, fitted.dayPlace ?? fitted.place);
        if (age !== undefined && !isUnknown(life) && isAbove(age.amount.low, life.amount.low)) {
          judge.atMost(age, life, place, (least, limit) => ({
            place,
            message: `${endName(piece, end)} has been temporary for ${daysText(least)} at least, above the ${limitInDays(limit)} that it may stay`,
            help: 'cut it off and make it again in full; the line was fitted with it',
            source: sourceOfLimit(limit),
            related: [{ place: fitted!.place, message: 'when the line was fitted' }],
          }));
          continue;
        }
        judge.cannot({ key: `day of ${end.which} end of ${piece.name}`, says: `when the temporary splice of ${endName(piece, end)} was made is not given`, help: 'write it as a dated `splice` in the logbook', place }, place);
        continue;
      }
      judge.atMost(timeSince(day, assessing.day, statement?.dayPlace ?? place), life, place, (age, limit) => ({
        place,
        message: `${endName(piece, end)} has been temporary for ${daysText(age)}, above the ${limitInDays(limit)} that it may stay`,
        help: `cut it off and make it again in full; it fell due on ${printDay(day + daysIn(limit))}`,
        source: sourceOfLimit(limit),
      }));
    }
  },
});
