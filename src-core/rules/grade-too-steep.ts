import { statementOf, writtenValue } from '../assess/facts.ts';
import { show, showLike, unitOf } from '../assess/show.ts';
import { quantityOf } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

const steepest_rad = Math.PI / 4;

export const gradeTooSteep = defineRule({
  name: 'grade-too-steep',
  on: 'pull',
  severity: 'warning',
  summary: 'A pull goes up a slope of more than 45 degrees.',
  why: 'so steep a pull comes near to a lift, for which a recovery winch is not rated: when it lets go, the load falls',
  source: 'winching guide, p. 8: the rule for slopes ends at 45°; beyond it our own careful choice, because no rule of the trade goes farther',
  bad: pullExample({ pull: pullWith({ grade: 'grade     50 deg' }) }),
  good: pullExample(),
  check(pull, judge) {
    const statement = statementOf(pull.block, 'grade');
    const written = statement === undefined ? undefined : quantityOf(statement.values, 'grade');
    if (written === undefined) return;
    const grade = writtenValue(written);
    judge.holds(written.value <= steepest_rad * (1 + 1e-9), () => ({
      place: written.place,
      message: `\`${pull.name}\` goes up ${show(grade)}, above ${showLike(exactly(steepest_rad), grade, 'down', unitOf(grade))}`,
      help: 'find a flatter way, or leave it to a hoist and people who rig for lifting',
    }));
  },
});
