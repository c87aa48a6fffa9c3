import type { BoundStatement } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

/** Values of one statement that cannot both be so, with how each reads. */
const excluding: Readonly<Record<string, readonly [word: string, measure: string, says: string]>> = {
  grade: ['flat', 'grade', 'that the way is level and that it is steep'],
  dragging: ['turning', 'wheels', 'that every wheel turns and that some do not'],
};

const saysBoth = (statement: BoundStatement): string | undefined => {
  const [word, measure, says] = excluding[statement.definition.head] ?? [];
  return word !== undefined && statement.values.get(word) !== undefined && statement.values.get(measure!) !== undefined ? says : undefined;
};

export const saysTwoThings = defineRule({
  name: 'says-two-things',
  on: 'block',
  heads: ['pull'],
  severity: 'error',
  summary: 'One statement says two things that cannot both be so.',
  why: 'the one would make the pull easier than the other, and the file does not say which is true',
  source: 'the grammar of the language',
  bad: pullExample({ pull: pullWith({ dragging: 'dragging  none 2 wheels of 4' }) }),
  good: pullExample(),
  check(block, judge) {
    for (const statement of block.statements) {
      const says = saysBoth(statement);
      judge.holds(says === undefined, () => ({ place: statement.place, message: `\`${statement.definition.head}\` says both ${says!}`, help: 'keep one of the two' }));
    }
  },
});
