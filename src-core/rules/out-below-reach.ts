import { isBelow } from '../base/compare.ts';
import { statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { quantityOf } from '../model/bound.ts';
import { pullExample } from './example-pull.ts';
import { defineRule } from './rule.ts';

const chain = (out: string): string => `chain to-the-larch {
  main outboard -> bow-22 -> trunk -> larch
  out  ${out}
}
`;

export const outBelowReach = defineRule({
  name: 'out-below-reach',
  on: 'pull',
  severity: 'warning',
  summary: 'A chain is judged with less line out than its pull takes.',
  why: 'with more line out the winch pulls from a lower layer, and so harder: the chain is judged for too little',
  source: 'SAE J706, rated line pull: a single line on the first layer; mechanics',
  bad: pullExample({ chain: chain('2 m') }),
  good: pullExample({ chain: chain('20 m') }),
  check({ name, chain: through, reach: { lineOut } }, judge) {
    const statement = through === undefined ? undefined : statementOf(through.block, 'out');
    const out = statement === undefined ? undefined : quantityOf(statement.values, 'out');
    if (through === undefined || out === undefined || isUnknown(lineOut)) return;
    judge.holds(!isBelow(out.value, lineOut.amount.low), () => ({
      place: out.place,
      message: `\`${through.name}\` is judged with ${show({ amount: { low: out.value, high: out.value }, kind: 'length', origin: { from: 'written', place: out.place, unit: out.unit } })} of line out, and \`${name}\` takes ${show(lineOut, { unit: unitOf({ amount: lineOut.amount, kind: 'length', origin: { from: 'written', place: out.place, unit: out.unit } }) })}`,
      help: 'write the line that is out in this pull, or leave `out` away: then the chain is judged for the reach of its pulls, or for the most that the winch pulls',
    }));
  },
});
