import { show } from '../assess/show.ts';
import { statementOf, writtenValue } from '../assess/facts.ts';
import { bridledRun } from '../assess/pull-run.ts';
import { isAbove } from '../base/compare.ts';
import { quantityOf } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

export const widest_rad = (120 * Math.PI) / 180;
const bridle = (angle: string): string => pullExample({
  chain: `chain to-the-larch {
  main outboard -> bow-22
  bow-22 -> trunk -> larch
  bow-22 -> other -> birch
}
`,
  pull: pullWith({ bridle: `bridle    ${angle}` }),
  more: `strap other {
  length  3 m
  wll     5 t
}

anchor birch {
  kind     tree
  holding  60 kN "tested 2026-05-02"
}
`,
});

export const bridleTooWide = defineRule({
  name: 'bridle-too-wide',
  on: 'pull',
  severity: 'error',
  summary: 'The legs of a bridle stand at more than 120 degrees.',
  why: 'beyond 120° each leg carries more than the whole pull, and the bow that joins them is pulled open',
  source: 'maker\'s catalogue reproducing ASME practice: over 120° between two slings on a bow is not allowed; mechanics for the load on the legs',
  citesRating: true,
  bad: bridle('130 deg'),
  good: bridle('60 deg'),
  check(pull, judge) {
    const statement = statementOf(pull.block, 'bridle');
    const written = statement === undefined ? undefined : quantityOf(statement.values, 'bridle');
    if (written === undefined || bridledRun(pull.run, pull.rigging.blocks) === undefined) return;
    judge.holds(!isAbove(written.value, widest_rad), () => ({
      place: written.place,
      message: `the legs of the bridle in \`${pull.name}\` stand at ${show(writtenValue(written))}, above 120 deg`,
      help: 'lengthen the legs, or take anchors that stand closer together',
    }));
  },
});
