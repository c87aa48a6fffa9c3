import { show } from '../assess/show.ts';
import { carefulOf } from '../mechanics/derivation.ts';
import { borderOf, isBeyondBorder, practiceFigure } from '../assess/practice-border.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { practiceKeyOf } from './practice-given-twice.ts';
import { builtInFor } from './practice-without-source.ts';
import { defineRule } from './rule.ts';

export const practiceBeyondPublished = defineRule({
  name: 'practice-beyond-published',
  on: 'block',
  heads: ['practice'],
  severity: 'error',
  summary: 'A figure of practice is beyond the last one that is taken.',
  why: 'a limit that cannot hold lets everything pass that it is meant to stop',
  source: '29 CFR 1910.179(h)(2)(iii)(a) for wraps; NAVEDTRA 14160 for the line factor; handbook overview of HMPE fibre for heat; maker\'s tuck-bury instruction for bury; NAVEDTRA 14160 for overload; sailing-press tests for knots in HMPE; our own careful choice for the others',
  bad: `practice "Tarn Hut supply crew" {
  keep-wraps  HMPE 1 wrap "it has always held"
}
`,
  good: `practice "Tarn Hut supply crew" {
  keep-wraps  HMPE 8 wraps "winch maker\'s sheet"
}
`,
  check(block, judge) {
    for (const statement of block.statements) {
      const [border, figure, builtIn] = [borderOf(statement), practiceFigure(statement), builtInFor(statement)];
      if (border === undefined || figure === undefined || builtIn === undefined || statement.broken.size > 0) continue;
      const text = (value: number): string => show({ amount: exactly(value), kind: builtIn.kind, origin: { from: 'written', place: statement.place } }, { careful: carefulOf(builtIn.kind) === 'up' ? 'up' : 'down' });
      judge.holds(!isBeyondBorder(statement), () => ({
        place: statement.place,
        message: `\`${practiceKeyOf(statement)}\` is ${text(figure)}, ${border.least === undefined ? `above the ${text(border.most!)}` : `below the ${text(border.least)}`} beyond which no figure is taken; the built-in one counts`,
        help: 'write the figure that the maker or the rule of the place gives, with where it comes from',
        source: printSource(border.source),
      }));
    }
  },
});
