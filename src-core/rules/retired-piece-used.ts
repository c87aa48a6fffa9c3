import { printDay } from '../model/day.ts';
import { isLineOnDrum } from './link-load.ts';
import { defineRule } from './rule.ts';

export const retiredPieceUsed = defineRule({
  name: 'retired-piece-used',
  on: 'chain',
  severity: 'error',
  summary: 'A chain uses a piece that is retired.',
  why: 'a line is retired because nobody can say what it still holds',
  source: 'common practice: what is retired is not loaded again',
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
  main outboard -> bow-22 -> tail inboard
  tail outboard -> bow-19 -> trunk -> larch
}

shackle bow-19 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

line tail {
  material  HMPE
  strands   12
  diameter  10 mm
  length    12 m
  breaking  92 kN
  inboard   eye bury 72 d taper 24 d stitched
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  retired  "melted at the fairlead"
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
  main outboard -> bow-22 -> tail inboard
  tail outboard -> bow-19 -> trunk -> larch
}

shackle bow-19 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

line tail {
  material  HMPE
  strands   12
  diameter  10 mm
  length    12 m
  breaking  92 kN
  inboard   eye bury 72 d taper 24 d stitched
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(chain, judge) {
    const seen = new Set<string>();
    for (const link of chain.links) {
      // What the winch carries has a finding there; the two ends of a piece are said once.
      if (link.piece === undefined || isLineOnDrum(chain, link) || seen.has(link.piece.name)) continue;
      seen.add(link.piece.name);
      const { retired, name } = link.piece;
      judge.holds(retired === undefined, () => ({
        place: link.place,
        message: `\`${name}\` was retired on ${printDay(retired!.day)} and stands in \`${chain.name}\``,
        help: 'put another line in its place',
        related: [{ place: retired!.statement.place, message: 'retired here' }],
      }));
    }
  },
});
