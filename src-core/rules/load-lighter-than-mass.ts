import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { statementOf, writtenValue } from '../assess/facts.ts';
import { quantityOf, textOf } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { asWritten } from './side-by-side.ts';
import { defineRule } from './rule.ts';

/** The same mass may be written in another unit, and rounded. */
const rounding = 0.99;

export const loadLighterThanMass = defineRule({
  name: 'load-lighter-than-mass',
  on: 'pull',
  severity: 'warning',
  summary: 'The weight written for a pull is less than the mass of the vehicle that is pulled, and nothing says who weighed it.',
  why: 'everything on the pull is judged with it, on the word of nobody',
  source: 'our own careful choice, because a figure that makes a pull easier needs somebody who answers for it',
  bad: pullExample({ pull: pullWith({ load: 'load      plover 2,100 kg' }) }),
  good: pullExample({ pull: pullWith({ load: 'load      plover 2,100 kg "weighbridge, 2026-05-17"' }) }),
  check({ block, name, resistance }, judge) {
    const load = statementOf(block, 'load');
    const written = load === undefined ? undefined : quantityOf(load.values, 'weight');
    const { vehicle } = resistance;
    if (load === undefined || written === undefined || vehicle === undefined) return;
    const mass = asGiven(vehicle.weight);
    if (isUnknown(mass) || textOf(load.values, 'note') !== undefined) return;
    judge.atLeast(writtenValue(written, 'weight'), { ...mass, amount: exactly(rounding * mass.amount.high) }, written.place, () => ({
      place: written.place,
      message: `\`${vehicle.name}\` counts with ${written.mass === undefined ? asWritten(written) : printAmount(exactly(written.mass), 'mass', { unit: written.unit })} in \`${name}\`, less than the ${show(written.mass === undefined || isUnknown(vehicle.mass) ? mass : vehicle.mass, { unit: written.unit, careful: 'up' })} that it weighs by its own block`,
      help: 'write who weighed it behind the figure, in quotes, with the day; or leave the weight out',
    }));
  },
});
