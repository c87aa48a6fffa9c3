import { isAbove } from '../base/compare.ts';
import { missingFact, statementOf } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { defineRule } from './rule.ts';

/** WAC 296-155-33905, figure 17: up to 5° a pull is in line. */
const inLine_rad = (5 * Math.PI) / 180;

export const deeSideLoaded = defineRule({
  name: 'dee-side-loaded',
  on: 'gear',
  severity: 'warning',
  summary: 'A dee shackle is loaded from the side.',
  why: 'its straight sides leave the load no place to settle, so the body is bent open',
  source: 'common practice: a dee shackle takes in-line loads, a bow shackle takes loads from several directions',
  bad: `shackle dee-19 {
  form       dee
  body       19 mm
  wll        4.7 t
  load-from  30 deg
}
`,
  good: `shackle bow-19 {
  form       bow
  body       19 mm
  wll        4.7 t
  load-from  30 deg
}
`,
  check(gear, judge) {
    const { angle } = gear;
    if (gear.form === undefined && gear.head === 'shackle' && angle !== undefined) return judge.cannot(missingFact(gear.block, 'form'), gear.block.namePlace);
    if (gear.form !== 'dee' || angle === undefined || isUnknown(angle)) return;
    judge.holds(!isAbove(angle.amount.high, inLine_rad), () => ({
      place: statementOf(gear.block, 'load-from')!.place,
      message: `dee shackle \`${gear.name}\` is loaded from ${show(angle)}; up to 5 deg counts as in line`,
      help: 'use a bow shackle here, or turn it into line with the pull',
    }));
  },
});
