import { factOf, statementOf } from '../assess/facts.ts';
import { showValue } from '../assess/show.ts';
import type { Value } from '../mechanics/derivation.ts';
import { wordOf } from '../model/bound.ts';
import { sheaveUntold } from '../trade/sheave-efficiency.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { defineRule } from './rule.ts';

const [source] = sheaveUntold.sources;
const least: Value = { amount: exactly(sheaveUntold.low), kind: 'share', origin: { from: 'constant', source } };
const snatch = (share: string): string => `block snatch {
  wll         8 t
  efficiency  ${share}
}
`;

export const lossAbovePublished = defineRule({
  name: 'loss-above-published',
  on: 'block',
  heads: ['block'],
  severity: 'warning',
  summary: 'A sheave is written to leave less of the tension than the poorest that is published.',
  why: 'what lies behind it is worked out for too little load; perhaps its loss was written',
  source: printSource(source),
  bad: snatch('10 %'),
  good: snatch('90 %'),
  check(block, judge) {
    const [written, bearing] = [statementOf(block, 'efficiency'), statementOf(block, 'bearing')];
    // A ring does not turn, and loses far more.
    if (written === undefined || (bearing !== undefined && wordOf(bearing.values, 'bearing') === 'ring')) return;
    judge.atLeast(factOf(block, 'efficiency'), least, written.place, (share, limit) => ({
      place: written.place,
      message: `\`${block.name ?? 'block'}\` leaves ${showValue(share)} of the tension, below the ${showValue(limit)} of a plain sheave`,
      help: 'write what is left behind it, not what is lost; or see why it runs so hard',
    }));
  },
});
