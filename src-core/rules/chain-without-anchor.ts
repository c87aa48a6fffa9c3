import { defineRule } from './rule.ts';

export const chainWithoutAnchor = defineRule({
  name: 'chain-without-anchor',
  on: 'chain',
  severity: 'information',
  summary: 'A chain leads to no anchor and no vehicle.',
  why: 'what the far end is made fast to, and what that holds, is not judged',
  source: 'our own careful choice, because the anchor is the link that is trusted most and known least',
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
  main outboard -> bow-22 -> trunk
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
`,
  check(chain, judge) {
    if (chain.links.length === 0 || chain.links.some((link) => link.sort === 'other')) return;
    judge.holds(chain.links.some((link) => link.sort === 'anchor' || link.sort === 'vehicle'), () => ({
      place: chain.block.namePlace,
      message: `what the far end of \`${chain.name}\` is made fast to is not given`,
      help: 'end a route with an `anchor`, or with a vehicle and its point',
    }));
  },
});
