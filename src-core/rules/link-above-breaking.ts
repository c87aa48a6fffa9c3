import { isNear } from '../base/compare.ts';
import { mostOf } from '../mechanics/derivation.ts';
import { loadAndLimit } from './force-text.ts';
import { eachLink, lessPull, loadOn, turnedClause } from './link-load.ts';
import { defineRule } from './rule.ts';

export const linkAboveBreaking = defineRule({
  name: 'link-above-breaking',
  on: 'chain',
  severity: 'error',
  summary: 'The load on a link is above what it breaks at.',
  why: 'it breaks, and everything between it and the winch flies',
  source: 'the breaking strength of its tag, less what its damage and its ends have cost',
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
  main outboard -> loop -> trunk -> larch
}

soft-shackle loop {
  diameter  5 mm
  breaking  18 kN
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
    eachLink(chain, 'breaking', (link) => {
      if (!link.breakingGiven) return undefined;
      return judge.atMost(link.load, link.breaking, link.place, (load, breaking) => {
        const text = loadAndLimit(load, breaking);
        const weakest = link.piece?.weakest;
        const most = weakest === undefined ? undefined : mostOf(weakest.strength);
        const where = weakest !== undefined && most !== undefined && isNear(most.amount.low, breaking.amount.low) && weakest.name !== 'line without damage' ? `, at its ${weakest.name}` : '';
        return {
          place: link.place,
          message: `${loadOn(link)}${text.load}, above the ${text.limit} at which it breaks${where}${turnedClause(link)}`,
          help: `take it out of the chain${lessPull(chain)}`,
        };
      }, link.doubt);
    });
  },
});
