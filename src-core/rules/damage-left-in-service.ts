import { inService } from '../assess/ends.ts';
import { strandLimit } from '../assess/strand-limit.ts';
import { damageAndLimit, damageSource, damageToCutOut, verbOf } from './damage-to-cut-out.ts';
import { defineRule } from './rule.ts';

export const damageLeftInService = defineRule({
  name: 'damage-left-in-service',
  on: 'line',
  severity: 'error',
  summary: 'Damage that is to be cut out is still in the line.',
  why: 'where several strands are cut, or fibre is melted or worn through, the line may part below any pull that is worked out for it',
  source: 'common practice for cut strands; CI 2001-04, as quoted in inspection guides, for abrasion and heat',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  cut 2 strands at 8.4 m from inboard
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  cut 1 strand at 8.4 m from inboard
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      if (piece.incomplete !== undefined) judge.cannot(piece.incomplete, piece.named);
      const left = [...damageToCutOut(piece)];
      for (const damage of piece.damages) {
        if (damage.notMeasured !== undefined) continue;
        const { unless } = strandLimit(piece.line);
        if (unless !== undefined && damage.strands > 0 && damage.remedy !== 'cut-out') judge.cannot(unless, damage.fact.place);
        judge.holds(!left.includes(damage), () => ({
          place: damage.fact.place,
          message: `${damageAndLimit(damage, piece)} ${verbOf(damage)} left in service`,
          help: 'cut it out and splice again, or retire the piece; until then the line is not to be loaded',
          source: damageSource(damage, piece),
          related: damage.zone.filter((fact) => fact !== damage.fact).map((fact) => ({ place: fact.place, message: 'counts as the same place' })),
        }));
      }
    }
  },
});
