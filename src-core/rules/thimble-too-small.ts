import { maybeFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { defineRule } from './rule.ts';

export const thimbleTooSmall = defineRule({
  name: 'thimble-too-small',
  on: 'chain',
  severity: 'warning',
  summary: 'A line is thicker than the thimble it lies in takes.',
  why: 'the line stands proud of the groove, is pinched at its edges and jumps out when it goes slack',
  source: 'the maker\'s figure for the line that the thimble takes',
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
  main outboard -> tube -> bow-22 -> trunk -> larch
}

thimble tube {
  groove  40 mm
  takes   8 mm
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
  main outboard -> tube -> bow-22 -> trunk -> larch
}

thimble tube {
  groove  40 mm
  takes   10 mm
}
`,
  check(chain, judge) {
    for (const { first, second } of chain.joints) {
      const [line, thimble] = first.piece === undefined ? [second, first] : [first, second];
      const block = thimble.declaration?.kind === 'thimble' ? thimble.declaration.block : undefined;
      const takes = block === undefined ? undefined : maybeFact(block, 'takes');
      if (line.piece === undefined || takes === undefined) continue;
      const { name } = line.piece;
      judge.atMost(line.piece.line.diameter, takes, thimble.place, (d, most) => ({
        place: thimble.place,
        message: `\`${name}\` is ${show(d)} thick, above the ${show(most, { unit: unitOf(d) })} that \`${thimble.name}\` takes`,
        help: 'use a thimble made for the line',
      }));
    }
  },
});
