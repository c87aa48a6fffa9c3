import { statementOf } from '../assess/facts.ts';
import { quantityOf, textOf } from '../model/bound.ts';
import { larch } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const holdingWithoutSource = defineRule({
  name: 'holding-without-source',
  on: 'anchor',
  severity: 'warning',
  summary: 'What an anchor holds is written, and nothing says who tested it or answers for it.',
  why: 'everything on the pull is judged with it, on the word of nobody',
  source: 'our own careful choice, because no figure is published for what a tree or a rock holds, and somebody answers for it',
  bad: larch.replace(/ "tested.*"/, ''),
  good: larch,
  check({ block, name }, judge) {
    const holding = statementOf(block, 'holding');
    if (holding === undefined || quantityOf(holding.values, 'holding') === undefined) return;
    judge.holds(textOf(holding.values, 'note') !== undefined, () => ({
      place: holding.place,
      message: `what \`${name}\` holds does not say who tested it, or who answers for it`,
      help: 'write it behind the figure, in quotes, with the day',
    }));
  },
});
