import { show, unitOf } from '../assess/show.ts';
import { statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

/** Distances taken by eye and by pacing agree so well. */
const agree = 0.1;

export const reachUnlikePlan = defineRule({
  name: 'reach-unlike-plan',
  on: 'pull',
  severity: 'error',
  summary: 'The reach of a pull is not the distance between the places that it gives.',
  why: 'line out, layer and wraps follow from the distance, and only one of the two is so',
  source: 'geometry; our own careful choice of a tenth, because distances off a track are paced',
  bad: pullExample({ pull: pullWith({ stands: 'stands    larch ahead 12 m' }) }),
  good: pullExample({ pull: pullWith({ stands: 'stands    larch ahead 21 m' }) }),
  check({ rigging, reach: { reach }, block }, judge) {
    const statement = statementOf(block, 'reach');
    if (statement === undefined || isUnknown(reach) || rigging.blocks.some((b) => b.run !== undefined)) return;
    for (const { from, to, crosses, planned_m } of rigging.parts) {
      if (!crosses || planned_m === undefined) continue;
      const apart = Math.abs(planned_m - reach.amount.high);
      judge.holds(apart <= agree * Math.max(planned_m, reach.amount.high) + 1e-9, () => ({
        place: statement.place,
        message: `reach is ${show(reach)}, and \`${from}\` and \`${to}\` stand ${show({ amount: exactly(planned_m), kind: 'length', origin: reach.origin }, { unit: unitOf(reach) })} apart`,
        help: 'measure again, and correct `reach` or `stands`',
        related: block.statements.filter((s) => s.definition.head === 'stands').map((s) => ({ place: s.place, message: 'where it stands' })),
      }));
    }
  },
});
