import { isBelow } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { factorText } from './design-factor-low.ts';
import { defineRule } from './rule.ts';

export const pointFactorLow = defineRule({
  name: 'point-factor-low',
  on: 'vehicle',
  severity: 'warning',
  summary: 'A recovery point is rated nearer to its breaking strength than the design factor allows.',
  why: 'a point that gives way flies at the far end of the line, and its rating leaves little for shock, rust and a pull from the side',
  source: 'the design factor of practice; our own careful choice, because no figure for points was found and steel gear counts like a shackle (ASME B30.26)',
  bad: `vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t breaking 5 t
}
`,
  good: `vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t breaking 24 t
}
`,
  check({ name, points }, judge, { practice }) {
    const needed = practice.value('design-factor', 'point');
    for (const { name: point, statement, rated, workingLimit, breaking } of points) {
      if (rated !== 'rated' || breaking === undefined || isUnknown(workingLimit) || isUnknown(needed)) continue;
      const factor = breaking.amount.low / workingLimit.amount.high;
      judge.holds(!isBelow(factor, needed.amount.high), () => ({ place: statement.place, ...factorText({ name: `${name} ${point}`, sort: 'point', factor, breaking, needed, means: '' }) }));
    }
  },
});
