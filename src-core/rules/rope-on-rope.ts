import type { AssessedChain } from '../assess/assess-chain.ts';
import type { Assessing } from '../assess/assessing.ts';
import { bearingName, isRopeOnRope } from '../assess/chain-joints.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { bow19, bow22, frontWinch, larch, reachByTail, tailLine, trunk } from './example-blocks.ts';
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
  bad: `${frontWinch}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye bury 72 d taper 24 d
}

${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> tail inboard
  tail outboard -> bow-19 -> trunk -> larch
}

${bow19}
${tailLine}`,
  good: `${frontWinch}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye bury 72 d taper 24 d
}

${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
${tailLine}`,
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
