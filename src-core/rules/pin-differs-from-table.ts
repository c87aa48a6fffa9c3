import { isBelow, isNear } from '../base/compare.ts';
import { statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { gradeSShackleOfBody } from '../trade/shackle-grade-s-table.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { defineRule } from './rule.ts';

export const pinDiffersFromTable = defineRule({
  name: 'pin-differs-from-table',
  on: 'gear',
  severity: 'warning',
  summary: 'The pin of a shackle is not the one its standard gives for the body.',
  why: 'a pin that was replaced by another one makes the marking on the body untrue',
  source: printSource(sources['as-2741']),
  bad: `shackle bow-19 {
  form     bow
  body     19 mm
  pin      20 mm
  wll      4.7 t
  made-to  AS-2741
}
`,
  good: `shackle bow-19 {
  form     bow
  body     19 mm
  pin      22 mm
  wll      4.7 t
  made-to  AS-2741
}
`,
  check(gear, judge) {
    const { pin, body } = gear;
    if (gear.standard !== 'AS-2741' || pin === undefined || body === undefined || isUnknown(pin) || isUnknown(body)) return;
    const row = gradeSShackleOfBody(body.amount.low);
    // A pin thinner than the body has a finding of its own.
    if (row === undefined || isBelow(pin.amount.high, body.amount.low)) return;
    judge.holds(isNear(pin.amount.low, row.pin_m), () => ({
      place: statementOf(gear.block, 'pin')!.place,
      message: `pin of \`${gear.name}\` is ${show(pin)}; AS 2741 gives ${printAmount(exactly(row.pin_m), 'length', { unit: unitOf(pin) })} for a body of ${show(body)}`,
      help: 'measure it again; a pin that is not the maker\'s own is replaced by one that is (WAC 296-155-33900(2)(c))',
    }));
  },
});
