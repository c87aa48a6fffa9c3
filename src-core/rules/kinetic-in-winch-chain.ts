import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

export const kineticInWinchChain = defineRule({
  name: 'kinetic-in-winch-chain',
  on: 'chain',
  severity: 'warning',
  summary: 'A kinetic strap is part of a chain that a winch loads.',
  why: 'it stores the energy of the pull and gives it back at once when anything lets go; a winch needs none of that stretch',
  source: 'common practice: kinetic rope and straps are for a moving vehicle, never for a winch pull',
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
  kind    kinetic
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
  kind    static
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
    if (chain.winch === undefined) return;
    for (const link of chain.links) {
      const kind = link.gearFacts?.head === 'strap' ? statementOf(link.gearFacts.block, 'kind') : undefined;
      if (kind === undefined) continue;
      judge.holds(wordOf(kind.values, 'kind') !== 'kinetic', () => ({
        place: link.place,
        message: `\`${link.name}\` is kinetic, and \`${chain.winch!.name}\` loads it`,
        help: 'use a static strap or an extension line',
        related: [{ place: kind.place, message: 'its kind' }],
      }));
    }
  },
});
