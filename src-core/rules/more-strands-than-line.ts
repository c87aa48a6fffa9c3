import { damagePlace } from '../assess/damage-place.ts';
import { inService } from '../assess/ends.ts';
import { given } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { defineRule } from './rule.ts';

export const moreStrandsThanLine = defineRule({
  name: 'more-strands-than-line',
  on: 'line',
  severity: 'error',
  summary: 'More strands are said to be damaged than the line has.',
  why: 'one of the two counts is wrong, so no strength can be told from them',
  source: 'arithmetic: the part is not more than the whole',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  pulled 16 strands at 8.4 m from inboard
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  pulled 1 strand at 8.4 m from inboard
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      for (const damage of piece.damages) {
        const { strands, kind } = damage.fact;
        const place = damage.fact.statement.values.get('strands')?.place ?? damage.fact.place;
        if (strands === undefined) continue;
        judge.atMost(given(strands, 'count', place), line.facts.strands, place, (_, all) => ({
          place,
          message: `${strands} ${kind} strands at ${damagePlace(damage)}, above the ${show(all)} strands of \`${piece.name}\``,
          help: 'count the strands again, or correct `strands` of the line',
        }));
      }
    }
  },
});
