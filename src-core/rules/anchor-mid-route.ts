import { defineRule } from './rule.ts';

export const anchorMidRoute = defineRule({
  name: 'anchor-mid-route',
  on: 'chain',
  severity: 'warning',
  summary: 'A route goes on behind an anchor or a vehicle.',
  why: 'what stands behind an anchor is not loaded by this pull, so the order of the links is wrong or the anchor is',
  source: 'geometry: a route ends at what holds it',
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
  main outboard -> bow-22 -> larch -> trunk
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
      route.links.forEach((link, i) => {
        if (link.sort !== 'anchor' && link.sort !== 'vehicle') return;
        judge.holds(i === 0 || i === route.links.length - 1, () => ({ place: link.place, message: `\`${link.name}\` stands in the middle of a route, where ${link.sort === 'anchor' ? 'an anchor' : 'a vehicle'} ends it`, help: 'put it at the end, or write what hangs behind it as a route of its own' }));
      });
    }
  },
});
