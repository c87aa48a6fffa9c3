import { mostThicknesses } from '../assess/assess-anchor.ts';
import { statementOf } from '../assess/facts.ts';
import { showLike, unitOf } from '../assess/show.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';
import { defineRule } from './rule.ts';

const log = (length: string): string => `anchor deadman {
  kind   buried-log
  log    ${length} face 30 cm
  depth  1.5 m
  slope  3
  soil   loam
}
`;

const times = (value: Value, k: number): Value => (isUnknown(value) ? value : { ...value, amount: { low: value.amount.low * k, high: value.amount.high * k } });

export const deadmanTooSlender = defineRule({
  name: 'deadman-too-slender',
  on: 'anchor',
  severity: 'warning',
  summary: 'A buried log is longer than five times its thickness.',
  why: 'a long thin log breaks at the line before the ground gives way',
  source: 'US Army TM 5-5420-278-10, WP 0035, deadman thickness',
  bad: log('2 m'),
  good: log('1.4 m'),
  check({ block, name, log: buried, holdingFrom }, judge) {
    const place = statementOf(block, 'log')?.place ?? block.namePlace;
    if (buried === undefined || (holdingFrom === 'written' && isUnknown(buried.length))) return;
    judge.atMost(buried.length, times(buried.face, mostThicknesses), place, (length, most) => ({
      place,
      message: `the log of \`${name}\` is ${showLike(length.amount, length, 'up')} long, above 5 times its thickness, ${showLike(most.amount, length, 'down', unitOf(length))}`,
      help: 'take a thicker log, or a shorter one buried deeper',
    }));
  },
});
