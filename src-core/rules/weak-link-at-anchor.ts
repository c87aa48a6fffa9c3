import { show } from '../assess/show.ts';
import { isBelow } from '../base/compare.ts';
import { isUnknown, type Given } from '../mechanics/derivation.ts';
import { bow22, frontWinch, larch, reachByTrunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const weakLinkAtAnchor = defineRule({
  name: 'weak-link-at-anchor',
  on: 'chain',
  severity: 'hint',
  summary: 'The weakest link of a chain is the one at the anchor.',
  why: 'when it breaks, the whole line and every shackle on it fly towards the winch and the people there',
  source: 'our own careful choice, because what breaks near the winch throws the least metal the shortest way',
  bad: `${frontWinch}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  220 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

${bow22}
strap trunk {
  length  3 m
  wll     2.1 t
}

${larch}
${reachByTrunk}`,
  good: `${frontWinch}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  120 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

${bow22}
strap trunk {
  length  3 m
  wll     8 t
}

${larch}
${reachByTrunk}`,
  check(chain, judge) {
    const weakest = chain.weakestByBreaking;
    const others = chain.links.filter((link) => link.sort !== 'anchor');
    // A link that is not known, or not certain, may be weaker still: then nothing is said about the weakest one.
    if (weakest === undefined || others.some((link) => isUnknown(link.breaking) || link.doubt !== undefined)) return;
    for (const route of chain.routes) {
      const last = route.links.at(-1);
      const before = route.links.at(-2);
      if (last?.sort !== 'anchor' || before === undefined || before.sort === 'anchor') continue;
      const strength = before.breaking as Given;
      const weaker = others.every((link) => link.key === before.key || isBelow(strength.amount.low, (link.breaking as Given).amount.low));
      judge.holds(!weaker || others.length < 2, () => ({
        place: before.place,
        message: `\`${before.name}\` at \`${last.name}\` breaks first of all links of \`${chain.name}\`, at ${show(strength)}`,
        help: 'use a stronger one there, and lay dampers on the line near it',
      }));
    }
  },
});
