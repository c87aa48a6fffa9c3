import { writtenValue } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { nameOf, quantityOf } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

const snatch = `block snatch {
  sheave      110 mm
  wll         12 t
  efficiency  95 %
}
`;
const doubled = pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', reach: 'reach     20 m', people: 'people    50 m' });

export const jointDrawnToBlock = defineRule({
  name: 'joint-drawn-to-block',
  on: 'pull',
  severity: 'warning',
  summary: 'A joint of the line lies behind a block when the pull begins, and is drawn towards it.',
  why: 'a shackle or a thimble does not run over a sheave: it jams there under load, and gives way or takes the block apart',
  source: 'common practice: nothing but plain line goes over a block; arithmetic: lengths along a line add up',
  bad: pullExample({
    chain: `chain to-the-larch {
  main outboard -> bow-22 -> spare inboard
  spare outboard -> plover bow
}
`,
    pull: doubled,
    more: `${snatch}
line spare {
  material  HMPE
  diameter  10 mm
  length    15 m
  breaking  140 kN
  inboard   eye bury 72 d taper 24 d
  outboard  eye bury 72 d taper 24 d
}
`,
  }),
  good: pullExample({
    chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`,
    pull: doubled.replace('20 m', '12 m'),
    more: snatch,
  }),
  check(pull, judge) {
    const via = pull.block.statements.find((s) => s.definition.head === 'via');
    const joined = pull.run?.links.find((link) => link.piece !== undefined && link.piece.name !== pull.line?.name);
    if (via === undefined || joined?.piece === undefined || pull.line === undefined) return;
    const after = quantityOf(via.values, 'after');
    const block = nameOf(via.values, 'block')?.name ?? 'the block';
    const { piece } = joined;
    judge.atMost(pull.reach.lineOut, after === undefined ? pull.reach.reach : writtenValue(after), joined.place, (out, distance) => ({
      place: joined.place,
      message: `the joint of \`${pull.line!.name}\` and \`${piece.name}\` lies behind \`${block}\` in \`${pull.name}\`: ${show(out)} of line are out, and the block is ${show(distance)} off`,
      help: `stop before the joint gets to the block, or hold the block off by \`${piece.name}\` instead of joining it to the line`,
    }), isUnknown(pull.reach.lineOut) ? undefined : pull.incomplete);
  },
});
