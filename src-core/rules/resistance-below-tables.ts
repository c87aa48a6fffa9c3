import { statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

/** Of the least that the tables give; less than half of it is asked about. */
const share = 0.5;

export const resistanceBelowTables = defineRule({
  name: 'resistance-below-tables',
  on: 'pull',
  severity: 'warning',
  summary: 'A resistance is written that is less than half of what the tables make of the same ground, grade, mire and wheels.',
  why: 'one of the two is of another day or another place, and everything on the pull is judged with the smaller one',
  source: 'our own careful choice, because the tables are careful, and a reading of less than half of theirs is looked at once more',
  bad: pullExample({ pull: pullWith({ mired: 'mired     to-hubs', resistance: 'resistance  9 kN "load cell, 2026-05-17"' }) }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  9 kN "load cell, 2026-05-17"' }) }),
  check({ block, name, resistance }, judge) {
    const { measured, total, byTables } = resistance;
    if (!measured || byTables === undefined || isUnknown(byTables)) return;
    const least = { ...byTables, amount: exactly(share * byTables.amount.low) };
    const { place } = statementOf(block, 'resistance')!;
    judge.atLeast(total, least, place, (written) => ({
      place,
      message: `the resistance in \`${name}\` is ${show(written)}; the tables make ${show(byTables, { unit: unitOf(written) })} of what else is written`,
      help: 'measure it where the load lies now, or correct what it lies in',
    }));
  },
});
