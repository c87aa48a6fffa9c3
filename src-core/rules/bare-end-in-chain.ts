import { defineRule } from './rule.ts';

export const bareEndInChain = defineRule({
  name: 'bare-end-in-chain',
  on: 'chain',
  severity: 'error',
  summary: 'A chain is joined to a bare end of a line.',
  why: 'there is nothing to join to: a bare end holds by a knot at best, and slippery line slips out of its knots',
  source: 'common practice: a line is joined by an eye',
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
  outboard  bare
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
    for (const link of chain.links) {
      const { end } = link;
      if (end === undefined) continue;
      judge.holds(end.facts.form !== 'bare', () => ({
        place: link.place,
        message: `\`${link.name}\` is a bare end`,
        help: 'splice an eye there, and write the splice',
        related: [{ place: end.facts.place, message: 'the end was left bare here' }],
      }));
    }
  },
});
