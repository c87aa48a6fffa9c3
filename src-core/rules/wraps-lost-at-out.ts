import { show, showValue, unitOf } from '../assess/show.ts';
import { statementOf, writtenValue } from '../assess/facts.ts';
import { asGiven } from '../mechanics/derivation.ts';
import { quantityOf } from '../model/bound.ts';
import { pullExample } from './example-pull.ts';
import { defineRule } from './rule.ts';

const chain = (out: string): string => `chain to-the-larch {
  main outboard -> bow-22 -> trunk -> larch
  out  ${out}
}
`;

export const wrapsLostAtOut = defineRule({
  name: 'wraps-lost-at-out',
  on: 'chain',
  severity: 'error',
  summary: 'A chain is loaded with so much line out that fewer wraps stay on the drum than are to be kept.',
  why: 'the kept wraps hold the line by friction; its fastening at the drum does not hold a pull',
  source: 'the wraps that the file keeps; Alberta OHS Code 2009 s. 299(2)',
  bad: pullExample({ chain: chain('29 m') }),
  good: pullExample({ chain: chain('21 m') }),
  check({ block, name, winch }, judge) {
    const statement = statementOf(block, 'out');
    const distance = statement === undefined ? undefined : quantityOf(statement.values, 'out');
    if (statement === undefined || distance === undefined || winch === undefined) return;
    const out = writtenValue(distance);
    judge.atMost(out, asGiven(winch.usable), statement.place, (taken, usable) => ({
      place: statement.place,
      message: `\`${name}\` is loaded with ${show(taken)} of line out; ${show(usable, { unit: unitOf(out), careful: 'down' })} are usable while \`${winch.name}\` keeps ${showValue(winch.keep)} wraps`,
      help: 'put an extension between, or start nearer',
    }));
  },
});
