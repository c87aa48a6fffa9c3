import { workedEnds, endName } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { asWritten } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const taperLongerThanBury = defineRule({
  name: 'taper-longer-than-bury',
  on: 'line',
  severity: 'error',
  summary: 'The taper is longer than the bury that it is part of.',
  why: 'the taper is the last part of the buried tail, so one of the two lengths is wrong',
  source: 'arithmetic: the part is not longer than the whole',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 90 d
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
      if (written === undefined || end.facts.bury === undefined) continue;
      judge.atMost(buried.taper, buried.bury, written.place, (_, bury) => ({
        place: written.place,
        message: `taper of ${endName(piece, end)} is ${asWritten(written)}, above its bury of ${end.facts.bury!.inDiameters === written.inDiameters ? asWritten(end.facts.bury!) : show(bury, { unit: written.unit })}`,
        help: 'measure both again; `bury` counts from the throat to the end of the tail, taper included',
      }));
    }
  },
});
