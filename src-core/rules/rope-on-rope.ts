import type { AssessedChain } from '../assess/assess-chain.ts';
import type { Assessing } from '../assess/assessing.ts';
import { bearingName, isRopeOnRope } from '../assess/chain-joints.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { defineRule } from './rule.ts';

/** A shackle of the file that this chain does not use yet and whose limit is known to take its load. */
function spareShackle(chain: AssessedChain, assessing: Assessing): string | undefined {
  for (const block of assessing.reader.blocks('shackle')) {
    if (block.name === undefined || chain.links.some((link) => link.declaration?.block === block)) continue;
    const { workingLimit } = assessing.gear(block);
    if (isUnknown(workingLimit) || isUnknown(chain.load) || isAbove(chain.load.amount.high, workingLimit.amount.low)) continue;
    return block.name;
  }
  return undefined;
}

export const ropeOnRope = defineRule({
  name: 'rope-on-rope',
  on: 'chain',
  severity: 'warning',
  summary: 'Two links bear on each other as bare rope on bare rope.',
  why: 'rope bent round rope is bent as sharply as it can be, each cuts into the other, and nobody has published what is left',
  source: printSource(sources['practice-rope-on-rope']),
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
  outboard  eye bury 72 d taper 24 d
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
  main outboard -> tail inboard
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
  outboard  eye bury 72 d taper 24 d
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
  check(chain, judge, assessing) {
    for (const joint of chain.joints) {
      const meets = isRopeOnRope(joint);
      if (typeof meets === 'object') {
        judge.cannot(meets, joint.place);
        continue;
      }
      judge.holds(!meets, () => {
        const spare = spareShackle(chain, assessing);
        return {
          place: joint.place,
          message: `${bearingName(joint.first)} bears on ${bearingName(joint.second)}, rope on rope`,
          help: 'put a shackle or a sleeved eye between them',
          fixes: spare === undefined ? [] : [{ title: `Put \`${spare}\` between them`, edits: [{ place: { ...joint.place, start: joint.first.place.end, end: joint.first.place.end }, text: ` -> ${spare}` }] }],
        };
      });
    }
  },
});
