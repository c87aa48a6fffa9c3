import { isAbove, isBelow } from '../base/compare.ts';
import { practiceFigure, practiceWord } from '../assess/practice-border.ts';
import { textOf, type BoundStatement } from '../model/bound.ts';
import { carefulOf } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { practiceValue, type PracticeValue } from '../trade/built-in-practice.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { practiceKeyOf } from './practice-given-twice.ts';
import { defineRule } from './rule.ts';

export const builtInFor = (statement: BoundStatement): PracticeValue | undefined => practiceValue(statement.definition.head, practiceWord(statement));

/** Heat has no careful side of its own as a measurement; as a limit, less is careful. */
const lessIsCareful = ({ key, kind }: PracticeValue): boolean => key === 'heat-limit' || key === 'fleet-angle-most' || (carefulOf(kind) === 'down' && key !== 'eye-size');
const moreIsCareful = ({ kind }: PracticeValue): boolean => carefulOf(kind) === 'up';

export const isMilder = (figure: number, builtIn: PracticeValue): boolean => (lessIsCareful(builtIn) ? isAbove(figure, builtIn.amount.high) : moreIsCareful(builtIn) && isBelow(figure, builtIn.amount.low));

export const practiceWithoutSource = defineRule({
  name: 'practice-without-source',
  on: 'block',
  heads: ['practice'],
  severity: 'warning',
  summary: 'A figure of practice is milder than the built-in one, and nothing says where it comes from.',
  why: 'everything judged with it passes more easily, on the word of nobody',
  source: 'our own careful choice, because a milder limit needs somebody who answers for it',
  bad: `practice "Tarn Hut supply crew" {
  line-factor  2
}
`,
  good: `practice "Tarn Hut supply crew" {
  line-factor  2 "crew rule 4: line at twice the winch"
}
`,
  check(block, judge) {
    for (const statement of block.statements) {
      const [builtIn, figure] = [builtInFor(statement), practiceFigure(statement)];
      if (builtIn === undefined || figure === undefined || statement.broken.size > 0 || !isMilder(figure, builtIn)) continue;
      judge.holds(textOf(statement.values, 'note') !== undefined, () => ({
        place: statement.place,
        message: `\`${practiceKeyOf(statement)}\` is ${show({ amount: exactly(figure), kind: builtIn.kind, origin: { from: 'written', place: statement.place } })}, milder than the ${show({ amount: builtIn.amount, kind: builtIn.kind, origin: { from: 'constant', source: builtIn.source } })} built in, and does not say where it comes from`,
        help: `write behind it, in quotes, who gives that figure; the built-in one is from: ${printSource(builtIn.source)}`,
      }));
    }
  },
});
