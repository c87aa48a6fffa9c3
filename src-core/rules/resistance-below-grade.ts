import { statementOf, writtenValue } from '../assess/facts.ts';
import { gradeResistance } from '../mechanics/grade-resistance.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { show, unitOf } from '../assess/show.ts';
import { quantityOf } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

export const resistanceBelowGrade = defineRule({
  name: 'resistance-below-grade',
  on: 'pull',
  severity: 'error',
  summary: 'The resistance that is written is less than the grade alone makes.',
  why: 'a load on a slope is held back by its own weight at least: the figure is of another day or another place',
  source: 'statics: the part of a weight along a slope is W sin α',
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  2 kN "load cell, 2026-05-17"' }) }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  9 kN "load cell, 2026-05-17"' }) }),
  check({ block, name, resistance }, judge) {
    const statement = statementOf(block, 'grade');
    const grade = statement === undefined ? undefined : quantityOf(statement.values, 'grade');
    if (!resistance.measured || grade === undefined || isUnknown(resistance.total)) return;
    const { place } = statementOf(block, 'resistance')!;
    const slope = asGiven(gradeResistance({ W: resistance.weight, α: writtenValue(grade) }));
    judge.atLeast(resistance.total, slope, place, (written, least) => ({
      place,
      message: `the resistance in \`${name}\` is ${show(written)}, below the ${show(least, { unit: unitOf(written), careful: 'up' })} that its weight alone makes on this grade`,
      help: 'measure it where the load lies now, or leave `resistance` out and have it worked out',
    }));
  },
});
