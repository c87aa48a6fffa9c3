import { show, unitOf } from '../assess/show.ts';
import { statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import { defineRule } from './rule.ts';

/** The published figure itself may be written in another unit, and rounded. */
const rounding = 1.01;

export const holdingAbovePublished = defineRule({
  name: 'holding-above-published',
  on: 'anchor',
  severity: 'warning',
  summary: 'An anchor is written to hold more than the published figures make of it.',
  why: 'everything on the pull is judged with it: what was proved in other ground, or by a pull that happened to hold, may not hold again',
  source: 'towing training text: a braked vehicle holds 0.666 of its weight; US Army TM 5-5420-278-10, WP 0035, for logs and pickets',
  bad: `anchor larch {
  kind     pickets
  pickets  single
  soil     loam
  holding  60 kN "tested 2026-05-02"
}
`,
  good: `anchor larch {
  kind     pickets
  pickets  single
  soil     loam
  holding  3 kN "tested 2026-05-02"
}
`,
  check({ block, name, vehicle, holding, holdingFrom, published }, judge) {
    const place = statementOf(block, 'holding')?.place;
    if (place === undefined || holdingFrom !== 'written' || isUnknown(published)) return;
    judge.atMost(holding, { ...published, amount: exactly(rounding * published.amount.low) }, place, (written) => ({
      place,
      message: `\`${name}\` is written to hold ${show(written)}; ${vehicle === undefined ? 'published figures make' : `braked, \`${vehicle.name}\` holds`} ${show(published, { unit: unitOf(written), careful: 'down' })}${vehicle === undefined ? ' of it' : ''}`,
      help: 'leave `holding` out; or write above it `# allow holding-above-published:` with what else holds it and the pull that proved it',
    }));
  },
});
