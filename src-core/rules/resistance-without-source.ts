import { isAbove } from '../base/compare.ts';
import { show } from '../assess/show.ts';
import { statementOf, writtenValue } from '../assess/facts.ts';
import { surfaceShare } from '../mechanics/surface-resistance.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { quantityOf, textOf, wordOf } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

export const resistanceWithoutSource = defineRule({
  name: 'resistance-without-source',
  on: 'pull',
  severity: 'warning',
  summary: 'A resistance replaces what the tables give, and nothing says who measured it.',
  why: 'everything on the pull is judged with it, on the word of nobody',
  source: 'our own careful choice, because a figure that makes a pull easier needs somebody who answers for it',
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  9 kN' }) }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  9 kN "load cell, 2026-05-17"' }) }),
  check({ block, name }, judge) {
    const whole = statementOf(block, 'resistance');
    if (whole !== undefined && quantityOf(whole.values, 'resistance') !== undefined) {
      judge.holds(textOf(whole.values, 'note') !== undefined, () => ({ place: whole.place, message: `the resistance in \`${name}\` does not say who measured it, or how`, help: 'write it behind the figure, in quotes, with the day' }));
      return;
    }
    const surface = statementOf(block, 'surface');
    const takes = surface === undefined ? undefined : quantityOf(surface.values, 'takes');
    const word = surface === undefined ? undefined : wordOf(surface.values, 'surface');
    if (surface === undefined || takes === undefined || word === undefined) return;
    const table = surfaceShare(word);
    if (isUnknown(table) || !isAbove(table.amount.high, takes.value)) return;
    judge.holds(textOf(surface.values, 'note') !== undefined, () => ({
      place: takes.place,
      message: `${word} takes ${show(writtenValue(takes))} in \`${name}\`, less than the ${show(table, { careful: 'up' })} of the table, and does not say who measured it`,
      help: 'write it behind the figure, in quotes, or leave `takes` out',
    }));
  },
});
