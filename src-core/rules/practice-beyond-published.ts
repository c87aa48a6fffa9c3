import { isAbove, isBelow } from '../base/compare.ts';
import { show } from '../assess/show.ts';
import { carefulOf } from '../mechanics/derivation.ts';
import { wordOf, type BoundStatement } from '../model/bound.ts';
import { printSource, type Source } from '../trade/source.ts';
import { ownChoice, sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';
import { practiceKeyOf } from './practice-given-twice.ts';
import { builtInFor, practiceFigure } from './practice-without-source.ts';
import { defineRule } from './rule.ts';

interface Border {
  readonly key: string;
  readonly for?: string;
  readonly least?: number;
  readonly most?: number;
  readonly source: Source;
}

/** Beyond these no published figure was found, or the figure contradicts itself. */
const borders: readonly Border[] = [
  { key: 'keep-wraps', least: 2, source: sources['29-cfr-1910-179'] },
  { key: 'line-factor', least: 4 / 3, source: sources['navedtra-14160-overload'] },
  { key: 'heat-limit', for: 'HMPE', most: toSI(144, unitNamed('degC')!), source: sources['hmpe-handbook'] },
  { key: 'abrasion-retire', most: 0.5, source: ownChoice('worn-by-half', 'line of which half is worn away is no line to judge by a shop\'s figure') },
  { key: 'cut-strands-limit', most: 3, source: ownChoice('a-quarter-of-strands', 'three of twelve strands are a quarter, at which worn line is cut out (CI 2001-04)') },
];

const borderOf = ({ definition, values }: BoundStatement): Border | undefined => borders.find((b) => b.key === definition.head && (b.for === undefined || b.for === wordOf(values, 'material')));

export const practiceBeyondPublished = defineRule({
  name: 'practice-beyond-published',
  on: 'block',
  heads: ['practice'],
  severity: 'error',
  summary: 'A figure of practice is beyond the last one that is taken.',
  why: 'a limit that cannot hold lets everything pass that it is meant to stop',
  source: '29 CFR 1910.179(h)(2)(iii)(a) for wraps; NAVEDTRA 14160 for the line factor; handbook overview of HMPE fibre for heat; our own careful choice for wear and cut strands',
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
      const beyond = (border.least !== undefined && isBelow(figure, border.least)) || (border.most !== undefined && isAbove(figure, border.most));
      judge.holds(!beyond, () => ({
        place: statement.place,
        message: `\`${practiceKeyOf(statement)}\` is ${text(figure)}, ${border.least === undefined ? `above the ${text(border.most!)}` : `below the ${text(border.least)}`} beyond which no figure is taken`,
        help: 'write the figure that the maker or the rule of the place gives, with where it comes from',
        source: printSource(border.source),
      }));
    }
  },
});
