import type { AssessedLink } from '../assess/assess-chain.ts';
import { defineRule } from './rule.ts';

export const chainClosesOnItself = defineRule({
  name: 'chain-closes-on-itself',
  on: 'chain',
  severity: 'error',
  summary: 'A route comes back to something it has passed already.',
  why: 'one thing cannot hang on itself; one of the names is wrong',
  source: 'geometry: a route runs from the winch to the anchor and does not come back',
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
  main outboard -> bow-22 -> trunk -> bow-22 -> larch
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
    for (const route of chain.routes) {
      const seen = new Map<string, AssessedLink>();
      for (const link of route.links) {
        const before = seen.get(link.key);
        judge.holds(before === undefined, () => ({
          place: link.place,
          message: `this route comes back to \`${link.name}\``,
          help: 'name the other piece of gear that is meant, or remove it',
          related: [{ place: before!.place, message: 'it stands here already' }],
        }));
        if (before === undefined) seen.set(link.key, link);
      }
    }
  },
});
