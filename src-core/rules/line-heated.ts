import { inService } from '../assess/ends.ts';
import { writtenValue } from '../assess/facts.ts';
import { heatLimit } from '../assess/heat-limit.ts';
import { show } from '../assess/show.ts';
import { quantityOf } from '../model/bound.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const lineHeated = defineRule({
  name: 'line-heated',
  on: 'line',
  severity: 'error',
  summary: 'The line got hotter than its fibre bears.',
  why: 'HMPE begins to lose strength far below the heat at which it melts, and looks sound afterwards',
  source: 'handbook overview of HMPE fibre: strength loss begins about 65 °C',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-02  fitted
  2026-06-14  heated  90 degC "rubbed on the exhaust"
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-02  fitted
  2026-06-14  heated  45 degC
}
`,
  check(line, judge) {
    const { material } = line.facts;
    const limit = heatLimit(line.facts);
    // What was hot and is cut out is not in the line any more.
    const heated = new Set(inService(line).flatMap((piece) => piece.heats.map((heat) => heat.fact.statement)));
    for (const entry of heated) {
      const written = quantityOf(entry.values, 'temperature');
      if (written === undefined) continue;
      judge.atMost(writtenValue(written), limit, written.place, (heat, most) => ({
        place: written.place,
        message: `\`${line.facts.name}\` was heated to ${show(heat)}, above the ${show(most, { unit: written.unit })} from which ${material} loses strength`,
        help: 'cut the place out, or retire the line: what fibre lost to heat does not show, and glazed or fused strands only tell that it was more',
        source: sourceOfLimit(most),
      }));
    }
  },
});
