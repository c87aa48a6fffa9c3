import { maybeFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { linesOverBlocks } from './lines-over-blocks.ts';
import { defineRule } from './rule.ts';

export const blockTooSmallForLine = defineRule({
  name: 'block-too-small-for-line',
  on: 'block',
  heads: ['chain', 'pull'],
  severity: 'error',
  summary: 'A line is thicker than the block takes.',
  why: 'it rides on the cheeks, which wear it and can let it jump between sheave and cheek',
  source: 'the maker\'s figure for the line that the block takes',
  citesRating: true,
  bad: `winch bow-winch {
  rated    20 kN
  carries  main
}

line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  wll     4 t
}

anchor larch {
  kind     tree
  girth    1.3 m
  holding  40 kN "tested 2026-05-02"
}

chain reach {
  main outboard -> bow-22 -> trunk -> larch
}

block snatch {
  sheave  100 mm
  takes   8 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  good: `winch bow-winch {
  rated    20 kN
  carries  main
}

line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  wll     4 t
}

anchor larch {
  kind     tree
  girth    1.3 m
  holding  40 kN "tested 2026-05-02"
}

chain reach {
  main outboard -> bow-22 -> trunk -> larch
}

block snatch {
  sheave  100 mm
  takes   12 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  check(block, judge, assessing) {
    for (const { gear, piece, place } of linesOverBlocks(block, assessing)) {
      const takes = maybeFact(gear.block, 'takes');
      if (takes === undefined) continue;
      judge.atMost(piece.line.diameter, takes, place, (d, most) => ({
        place,
        message: `\`${piece.name}\` is ${show(d)} thick, above the ${show(most, { unit: unitOf(d) })} that \`${gear.name}\` takes`,
        help: 'use a block made for the line',
      }));
    }
  },
});
