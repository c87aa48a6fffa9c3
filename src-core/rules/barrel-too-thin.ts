import { statementOf } from '../assess/facts.ts';
import { showLike, showValue } from '../assess/show.ts';
import { bendRatio } from '../mechanics/bend-ratio.ts';
import { asGiven, isUnknown, type Given } from '../mechanics/derivation.ts';
import { bendOverPin } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { printNumber } from '../units/print.ts';
import { leastRatioOverSheave } from './sheave-too-small.ts';
import { drumExample } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const barrelTooThin = defineRule({
  name: 'barrel-too-thin',
  on: 'winch',
  severity: 'information',
  summary: 'The barrel of a drum is thin for the line that is wound on it.',
  why: 'line that is wound over a sharp bend under load heats, wears and loses strength in its first layer',
  source: `common practice, because no figure for drums was found: line that runs onto a barrel bends as over a sheave; ${printSource(bendOverPin)}`,
  bad: drumExample({ barrel: '20 mm' }),
  good: drumExample(),
  check({ name, block, barrel, diameter, piece }, judge) {
    const place = statementOf(block, 'barrel')?.place;
    // A drum or a line whose size is missing is asked for it elsewhere.
    if (place === undefined || piece === undefined || isUnknown(barrel) || isUnknown(diameter)) return;
    const least = leastRatioOverSheave(piece.line.material === 'wire');
    judge.atLeast(asGiven(bendRatio({ D: barrel, d: diameter })), least, place, (ratio) => ({
      place,
      message: `barrel of \`${name}\` is ${showValue(barrel)}, ${printNumber(ratio.amount.low, 'down', 1)} times the ${showValue(diameter)} of \`${piece.name}\`, below the ${showValue(least)} times that is asked of a sheave`,
      help: `ask its maker which line the drum is made for, and look at the first layer often; ${showLike(exactly(barrel.amount.low / (least as Given).amount.high), diameter, 'down')} or thinner has that bend`,
    }));
  },
});
