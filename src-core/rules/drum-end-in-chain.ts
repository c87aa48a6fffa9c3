import { defineRule } from './rule.ts';

export const drumEndInChain = defineRule({
  name: 'drum-end-in-chain',
  on: 'chain',
  severity: 'error',
  summary: 'A chain is joined to the end of a line that is on the drum.',
  why: 'that end lies under the wraps and cannot be reached, or the two ends are mixed up',
  source: 'geometry: a line hangs from its drum by its inboard end',
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
  main inboard -> bow-22 -> trunk -> larch
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
  check(chain, judge, assessing) {
    for (const link of chain.links) {
      if (link.piece === undefined || link.end?.which !== 'inboard') continue;
      const winch = assessing.reader.winchesCarrying(link.piece.name)[0];
      const { piece } = link;
      judge.holds(winch === undefined, () => ({
        place: link.place,
        message: `the inboard end of \`${piece.name}\` is on the drum of \`${winch!.name ?? 'the winch'}\``,
        help: `write \`${piece.name} outboard\`, or take the line off the drum: remove \`carries\``,
        related: [{ place: winch!.namePlace, message: 'carried here' }],
        fixes: link.link.link === 'name' && link.link.part !== undefined ? [{ title: `Write \`${piece.name} outboard\``, edits: [{ place: link.link.part.place, text: 'outboard' }] }] : [],
      }));
    }
  },
});
