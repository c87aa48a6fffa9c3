import type { AssessedLink } from '../assess/assess-chain.ts';
import { defineRule } from './rule.ts';

/** What a link is part of: both ends of a piece are one thing, and so is a vehicle with its points. */
const thing = (link: AssessedLink): string => (link.link.link === 'name' ? link.link.name : link.key);

export const routesNotJoined = defineRule({
  name: 'routes-not-joined',
  on: 'chain',
  severity: 'warning',
  summary: 'A route of a chain hangs on none of the others.',
  why: 'its load does not come from this chain, so it is judged for the wrong one',
  source: 'geometry: what is not joined is not loaded',
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
  bow-19 -> trunk -> larch
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
    const [first, ...rest] = chain.routes;
    if (first === undefined) return;
    const reached = new Set(first.links.map(thing));
    // A route that begins with a block says what the block hangs on: the line that runs through it is the pull's business.
    let waiting = rest.filter((route) => route.links[0]?.gear !== 'block');
    for (;;) {
      const joined = waiting.filter((route) => route.links.some((link) => reached.has(thing(link))));
      if (joined.length === 0) break;
      for (const route of joined) for (const link of route.links) reached.add(thing(link));
      waiting = waiting.filter((route) => !joined.includes(route));
    }
    for (const route of rest) {
      judge.holds(!waiting.includes(route), () => ({ place: route.statement.place, message: `nothing joins this route to the first one of \`${chain.name}\``, help: 'name the link they share in both, or write it as a chain of its own' }));
    }
  },
});
