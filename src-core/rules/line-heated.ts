import { inService } from '../assess/ends.ts';
import { writtenValue } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isUnknown, unknown } from '../mechanics/derivation.ts';
import { quantityOf } from '../model/bound.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const lineHeated = defineRule({
  name: 'line-heated',
  on: 'block',
  severity: 'warning',
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
  check(block, judge, assessing) {
    if (block.definition.head !== 'line') return;
    const line = assessing.line(block);
    const { material, materialCause } = line.facts;
    const logged = new Set(inService(line).flatMap((piece) => piece.long.log.map((entry) => entry.statement)));
    for (const entry of logged) {
      const written = entry.definition.head === 'heated' ? quantityOf(entry.values, 'temperature') : undefined;
      if (written === undefined) continue;
      const known = materialCause === undefined ? assessing.practice.value('heat-limit', material) : unknown(materialCause);
      const limit = isUnknown(known) && materialCause === undefined ? unknown({ ...known.unknown, says: `no heat limit for ${material} was found`, help: 'ask its maker, and look for glaze where it was hot' }) : known;
      judge.atMost(writtenValue(written), limit, written.place, (heat, most) => ({
        place: written.place,
        message: `\`${block.name ?? 'line'}\` was heated to ${show(heat)}, above the ${show(most, { unit: written.unit })} from which ${material} loses strength`,
        help: 'look for glazed or fused fibre there; cut it out where you find any, or where nobody can say',
        source: sourceOfLimit(most),
      }));
    }
  },
});
