import { endName, workedEnds } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { isAbove, isBelow } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { lengthText } from './fix-text.ts';
import { asWritten } from './side-by-side.ts';
import { defineRule } from './rule.ts';

/** Published tapers are a third of the bury. */
const mostOfBury = 1 / 2;

export const taperTooLong = defineRule({
  name: 'taper-too-long',
  on: 'line',
  severity: 'warning',
  summary: 'More than half of a buried tail is tapered.',
  why: 'a tapered tail fills the line less and grips less; the bury that is asked for counts on a tail that is whole for most of it',
  source: 'our own careful choice, because published tapers are a third of the bury (maker\'s published instruction, 12-strand high-modulus eye splice)',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 72 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge) {
    for (const { piece, end, buried } of workedEnds(line)) {
      const written = end.facts.taper;
      const { bury, taper, needed, taperNeeded } = buried;
      // A taper above its bury is said by itself, and so is a short bury: beside that one the taper may be as long as a full bury bears.
      if (written === undefined || isUnknown(bury) || isUnknown(taper) || isAbove(taper.amount.high, bury.amount.low)) continue;
      const most = mostOfBury * Math.max(bury.amount.low, isUnknown(needed) ? 0 : needed.amount.high);
      const isAll = !isBelow(taper.amount.high, bury.amount.low);
      judge.holds(!isAll && !isAbove(taper.amount.high, most), () => ({
        place: written.place,
        message: `taper of ${endName(piece, end)} is ${asWritten(written)}, ${isAll ? 'all' : 'more than half'} of its bury of ${end.facts.bury!.inDiameters === written.inDiameters ? asWritten(end.facts.bury!) : show(bury, { unit: written.unit })}`,
        help: isUnknown(taperNeeded) ? 'measure both again; the taper is the last part of the bury' : `taper the last ${lengthText(taperNeeded, written)} of the tail, or measure both again`,
        related: [{ place: end.facts.bury!.place, message: 'its bury' }],
      }));
    }
  },
});
