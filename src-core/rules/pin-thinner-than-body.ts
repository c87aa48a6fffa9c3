import { isBelow } from '../base/compare.ts';
import { statementOf } from '../assess/facts.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { bow22 } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const pinThinnerThanBody = defineRule({
  name: 'pin-thinner-than-body',
  on: 'gear',
  severity: 'warning',
  summary: 'The pin of a shackle is thinner than its body.',
  why: 'the pin carries the bend, so makers make it thicker; a thinner one belongs to another shackle, or is a bolt',
  source: 'AS 2741, grade S: in every row the pin is thicker than the body',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   19 mm
  wll   6.5 t
}
`,
  good: bow22,
  check(gear, judge) {
    const { pin, body } = gear;
    if (pin === undefined || body === undefined || isUnknown(pin) || isUnknown(body)) return;
    judge.holds(!isBelow(pin.amount.high, body.amount.low), () => ({
      place: statementOf(gear.block, 'pin')!.place,
      message: `pin of \`${gear.name}\` is ${showValue(pin)}, thinner than its body of ${showValue(body)}`,
      help: 'measure both again; if the pin is thinner, fit the maker\'s own pin',
      related: [{ place: statementOf(gear.block, 'body')!.place, message: 'its body' }],
    }));
  },
});
