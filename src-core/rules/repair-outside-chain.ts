import { defineRule } from './rule.ts';

export const repairOutsideChain = defineRule({
  name: 'repair-outside-chain',
  on: 'chain',
  severity: 'hint',
  summary: 'A chain comes after a repair of a line that it does not use.',
  why: 'the repair changes nothing here, so the name or the chain is not the one that was meant',
  source: 'the grammar of the language',
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

chain reach after field-fix {
  main outboard -> bow-22 -> trunk -> larch
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

repair field-fix on tail {
  cut     at 10 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d
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

chain reach after field-fix {
  main outboard -> bow-22 -> trunk -> larch
}

repair field-fix on main {
  cut     at 20 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d
}
`,
  check(chain, judge, assessing) {
    const { repair } = chain;
    const line = repair === undefined ? undefined : assessing.lineOfRepair(repair);
    if (repair === undefined || line === undefined || chain.links.some((link) => link.sort === 'line' && link.piece === undefined)) return;
    judge.holds(chain.links.some((link) => link.piece?.line.block === line), () => ({
      place: chain.block.header.get('repair')!.place,
      message: `\`${repair.name ?? 'the repair'}\` is a repair of \`${line.name ?? 'a line'}\`, which \`${chain.name}\` does not use`,
      help: 'name another repair, or remove `after`',
    }));
  },
});
