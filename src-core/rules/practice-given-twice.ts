import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { wordOf } from '../model/bound.ts';
import { wholeLine } from './fix-text.ts';
import { defineRule } from './rule.ts';

/** What a value of practice is for: two statements of one key set the same. */
export const practiceKeyOf = ({ definition, values }: BoundStatement): string => [definition.head, ...['material', 'gear', 'wear', 'bearing', 'rule'].flatMap((key) => wordOf(values, key) ?? [])].join(' ');

function* repeats(block: BoundBlock): Generator<{ readonly first: BoundStatement; readonly second: BoundStatement }> {
  const seen = new Map<string, BoundStatement>();
  for (const statement of block.statements) {
    const key = practiceKeyOf(statement);
    const first = seen.get(key);
    if (first === undefined) seen.set(key, statement);
    else yield { first, second: statement };
  }
}

const sameFigure = (a: BoundStatement, b: BoundStatement): boolean => {
  const figure = ({ values }: BoundStatement): string => [...values].map(([key, v]) => `${key} ${v.type === 'quantity' ? v.value : v.type === 'count' ? v.count : ''}`).join();
  return figure(a) === figure(b) && wordOf(a.values, 'level') === wordOf(b.values, 'level');
};

export const practiceGivenTwice = defineRule({
  name: 'practice-given-twice',
  on: 'block',
  heads: ['practice'],
  severity: 'error',
  summary: 'A practice block gives one figure twice.',
  why: 'only one of the two can be the crew\'s, and the last one would count without a word',
  source: 'the grammar of the language',
  bad: `practice "Tarn Hut supply crew" {
  line-factor  3 "UFC 4-159-03"
  line-factor  2 "crew rule 4"
}
`,
  good: `practice "Tarn Hut supply crew" {
  line-factor  2 "crew rule 4"
}
`,
  check(block, judge, assessing) {
    for (const { first, second } of repeats(block)) {
      judge.holds(false, () => ({
        place: second.place,
        message: `\`${practiceKeyOf(second)}\` stands twice in this \`practice\``,
        help: 'keep one of them; the last one counts until then',
        related: [{ place: first.place, message: 'the first one' }],
        fixes: [{ title: 'Remove the second one', edits: [{ place: wholeLine(second.place), text: '' }] }],
      }));
    }
    // A rig may well have another figure than the shop that it takes in: that is told, and no fault.
    const all = assessing.reader.practices();
    const above = new Map(all.slice(0, all.indexOf(block)).flatMap((other) => other.statements.map((s) => [practiceKeyOf(s), s] as const)));
    for (const statement of block.statements) {
      const first = above.get(practiceKeyOf(statement));
      if (first === undefined || sameFigure(first, statement)) continue;
      judge.report({
        place: statement.place,
        severity: 'information',
        message: `\`${practiceKeyOf(statement)}\` replaces the figure of another \`practice\``,
        why: 'everything is judged with the last one',
        help: 'leave it away where the shop\'s own figure is to count',
        related: [{ place: first.place, message: 'the figure it replaces' }],
      });
    }
  },
});
