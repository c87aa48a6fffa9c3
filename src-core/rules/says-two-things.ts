import { nameOf, quantityOf, wordOf, type BoundStatement } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

/** Values of one statement that cannot both be so, with how each reads. */
const excluding: Readonly<Record<string, readonly [word: string, measure: string, says: string]>> = {
  grade: ['flat', 'grade', 'that the way is level and that it is steep'],
  dragging: ['turning', 'wheels', 'how much turns and which wheels do not'],
  cut: ['drop', 'keep', 'that the outboard piece goes on under the name of the line and that it has another one'],
};

/** A word of wear with a share that it does not mean. */
function wearDisagrees({ definition, values }: BoundStatement): boolean {
  const [share, severity] = [quantityOf(values, 'share'), wordOf(values, 'severity')];
  return definition.head === 'damage' && share !== undefined && severity !== undefined && (severity === 'heavy') !== share.value >= 0.25 * (1 - 1e-9);
}

const saysBoth = (statement: BoundStatement): string | undefined => {
  const [word, measure, says] = excluding[statement.definition.head] ?? [];
  return word !== undefined && statement.values.get(word) !== undefined && statement.values.get(measure!) !== undefined ? says : undefined;
};

export const saysTwoThings = defineRule({
  name: 'says-two-things',
  on: 'block',
  heads: ['pull', 'line', 'repair'],
  severity: 'error',
  summary: 'One statement says two things that cannot both be so.',
  why: 'the one may make things easier than the other, and the file does not say which is true',
  source: 'the grammar of the language',
  bad: pullExample({ pull: pullWith({ dragging: 'dragging  none 2 wheels of 4' }) }),
  good: pullExample(),
  check(block, judge) {
    const standing = new Map<string, BoundStatement>();
    for (const statement of block.statements) {
      const vehicle = statement.definition.head === 'footing' ? nameOf(statement.values, 'vehicle')?.name : undefined;
      if (vehicle !== undefined) {
        const first = standing.get(vehicle);
        if (first === undefined) standing.set(vehicle, statement);
        judge.holds(first === undefined || wordOf(first.values, 'footing') === wordOf(statement.values, 'footing'), () => ({ place: statement.place, message: `\`footing\` says two things of \`${vehicle}\``, help: 'keep one of the two', related: [{ place: first!.place, message: 'the first one' }] }));
      }
      if (wearDisagrees(statement)) judge.holds(false, () => ({ place: statement.place, message: 'the word and the share of this wear do not agree: heavy is a quarter or more, light and moderate are less', help: 'keep the share where it was measured, else the word; the worse of the two counts until then' }));
      const says = saysBoth(statement);
      judge.holds(says === undefined, () => ({ place: statement.place, message: `\`${statement.definition.head}\` says both ${says!}`, help: 'keep one of the two' }));
    }
  },
});
