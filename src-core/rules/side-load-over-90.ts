import { isAbove } from '../base/compare.ts';
import { greatestSideLoad_rad } from '../assess/assess-gear.ts';
import { statementOf } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { over90 } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { defineRule } from './rule.ts';

export const sideLoadOver90 = defineRule({
  name: 'side-load-over-90',
  on: 'gear',
  severity: 'error',
  summary: 'A shackle is loaded from more than 90° off its own line.',
  why: 'no share of the working limit is given for it: the body opens and the pin bends',
  source: printSource(over90),
  citesRating: true,
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  load-from  100 deg
}
`,
  good: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  load-from  30 deg
}
`,
  check(gear, judge) {
    const { angle } = gear;
    if (angle === undefined || isUnknown(angle)) return;
    judge.holds(!isAbove(angle.amount.high, greatestSideLoad_rad), () => ({
      place: statementOf(gear.block, 'load-from')!.place,
      message: `\`${gear.name}\` is loaded from ${show(angle)}, above the 90 deg up to which a side load is permitted`,
      help: 'turn the shackle into line with the pull, or join with a ring',
    }));
  },
});
