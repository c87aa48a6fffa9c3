import { defineRule } from './rule.ts';

export const chainWithoutRoute = defineRule({
  name: 'chain-without-route',
  on: 'chain',
  severity: 'warning',
  summary: 'A chain says nothing about what hangs on what.',
  why: 'there is nothing in it to judge',
  source: 'the grammar of the language',
  bad: `chain reach {
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
    if (chain.block.statements.some((s) => s.broken.size > 0) || chain.block.brokenHeads.size > 0) return;
    judge.holds(chain.links.length > 0, () => ({ place: chain.block.namePlace, message: `\`${chain.name}\` has no route`, help: 'write its links joined by arrows, such as `main outboard -> bow-22 -> larch`' }));
  },
});
