import { listed, neighboursOf } from './neighbours.ts';
import { defineRule } from './rule.ts';

export const endUsedTwice = defineRule({
  name: 'end-used-twice',
  on: 'chain',
  severity: 'warning',
  summary: 'One end of a line is joined to several things.',
  why: 'one eye takes one joint: two pull it open sideways, or the second is meant to be the other end',
  source: 'common practice: what has to be joined to one eye is collected in a ring or a bow shackle',
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
  tail inboard -> bow-19 -> trunk -> larch
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
    for (const link of chain.links) {
      if (link.sort !== 'line' || link.end === undefined) continue;
      const partners = neighboursOf(chain, link);
      judge.holds(partners.length <= 1, () => ({
        place: link.place,
        message: `\`${link.name}\` is joined to ${listed(partners)}`,
        help: 'correct the end, or collect them in a ring or a bow shackle',
        related: partners.slice(1).map((other) => ({ place: other.place, message: 'joined here too' })),
      }));
    }
  },
});
