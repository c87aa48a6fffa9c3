import { show, unitOf } from '../assess/show.ts';
import { isBelow } from '../base/compare.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

const log = (length: string): string => `anchor larch {
  kind   buried-log
  log    ${length} face 40 cm
  depth  1.5 m
  slope  3
  soil   loam
}
`;

export const deadmanTooShort = defineRule({
  name: 'deadman-too-short',
  on: 'pull',
  severity: 'error',
  summary: 'A buried log is shorter than the pull on it needs.',
  why: 'a log holds by the ground in front of its face: too little face, and it cuts through',
  source: 'US Army TM 5-5420-278-10, WP 0035 table 9',
  bad: pullExample({ anchor: log('60 cm'), pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  good: pullExample({ anchor: log('1.2 m'), pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  check(pull, judge) {
    for (const { anchor, load, place, name, doubt } of pull.loaded) {
      if (anchor?.log === undefined || anchor.holdingFrom === 'written') continue;
      const { length, counted } = anchor.log;
      judge.atLeast(isUnknown(length) ? length : counted, isUnknown(length) ? length : asGiven(anchor.log.lengthFor(load)), place, (has, needed) => ({
        place,
        message: `the log of \`${name}\` ${isUnknown(length) || isBelow(has.amount.low, length.amount.low) ? `counts with ${show(has)}` : `is ${show(has)} long`}, below the ${show(needed, { unit: unitOf(has), careful: 'up' })} that this pull needs`,
        help: 'take a longer or thicker log, bury it deeper, or pull flatter',
      }), doubt ?? pull.incomplete);
    }
  },
});
