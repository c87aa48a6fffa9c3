import { defineRule } from './rule.ts';

export const unratedPoint = defineRule({
  name: 'unrated-point',
  on: 'vehicle',
  severity: 'information',
  summary: 'A recovery point has no rating.',
  why: 'a point without a rating may be a tie-down, which is made to hold the vehicle on a trailer and not to be pulled on',
  source: 'common practice; WAC 296-304-07005 asks that gear without a marked limit is not used',
  bad: `vehicle plover {
  mass   2,650 kg
  point  bow
}
`,
  good: `vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t
}
`,
  check({ name, points }, judge) {
    for (const point of points) {
      if (point.rated === 'broken') continue;
      judge.holds(point.rated !== 'none', () => ({
        place: point.statement.place,
        message: `point \`${point.name}\` of \`${name}\` has no rating`,
        help: 'add `rated` from its maker, or `breaking`; do not pull on it until then',
      }));
    }
  },
});
