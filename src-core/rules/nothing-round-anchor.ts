import type { AssessedLink } from '../assess/assess-chain.ts';
import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { bow22, frontWinch, larch, mainLine, soundChain } from './example-blocks.ts';
import { defineRule } from './rule.ts';

/** Anchors that have nothing to hook into: something goes round them. */
const plain: Readonly<Record<string, string>> = { tree: 'a tree', rock: 'a rock', 'buried-log': 'a buried log' };

/** How an anchor of that kind is called; undefined for what has an eye or a point, or is no anchor. */
export function plainForm({ sort, declaration }: AssessedLink): string | undefined {
  const kind = sort !== 'anchor' || declaration === undefined ? undefined : statementOf(declaration.block, 'kind');
  return kind === undefined ? undefined : plain[wordOf(kind.values, 'kind') ?? ''];
}

export const nothingRoundAnchor = defineRule({
  name: 'nothing-round-anchor',
  on: 'chain',
  severity: 'warning',
  summary: 'A chain ends at a tree, a rock or a log with nothing that goes round it.',
  why: 'a line led round a trunk and back on itself is bent over its own strands and cut by them, and whatever is taken instead on the ground is not in the figures',
  source: 'common practice: a strap or sling goes round an anchor, never the winch line',
  bad: `${frontWinch}
${mainLine}
${bow22}
${larch}
chain reach {
  main outboard -> bow-22 -> larch
}
`,
  good: soundChain,
  check(chain, judge) {
    for (const { first, second, place } of chain.joints) {
      const [anchor, other] = plainForm(second) === undefined ? [first, second] : [second, first];
      const form = plainForm(anchor);
      if (form === undefined) continue;
      // A ring may be set in the rock itself.
      judge.holds(other.gear === 'strap' || (form === plain['rock'] && other.gear === 'ring'), () => ({
        place,
        message: `\`${other.name}\` cannot go round \`${anchor.name}\`, which is ${form}`,
        help: 'write the strap that goes round it between the two, as a `basket` with both its ends in a shackle',
      }));
    }
  },
});
