import type { AssessedLink } from '../assess/assess-chain.ts';
import { maybeFact, statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { plainForm } from './nothing-round-anchor.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk, soundChain } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const strapOf = (first: AssessedLink, second: AssessedLink): readonly [strap: AssessedLink, anchor: AssessedLink] | undefined =>
  first.gear === 'strap' && plainForm(second) !== undefined ? [first, second] : second.gear === 'strap' && plainForm(first) !== undefined ? [second, first] : undefined;

export const strapNotRoundAnchor = defineRule({
  name: 'strap-not-round-anchor',
  on: 'chain',
  severity: 'warning',
  summary: 'A strap at a tree, a rock or a log is hitched end to end, or too short to go round it.',
  why: 'a strap holds a trunk as a basket or as a choker: a straight one does not hold it, and one that is pulled together round it spreads what joins its ends',
  source: 'common practice: a sling holds what it goes round',
  bad: `${frontWinch}
${mainLine}
${bow22}
${larch}
${reachByTrunk}
strap trunk {
  length  1.2 m
  wll     4 t
  hitch   basket
}
`,
  good: soundChain,
  check(chain, judge) {
    for (const { first, second, place } of chain.joints) {
      const found = strapOf(first, second);
      if (found === undefined) continue;
      const [strap, anchor] = found;
      const hitch = strap.gearFacts?.hitch;
      const form = plainForm(anchor)!;
      judge.holds(hitch !== 'straight', () => ({
        place,
        message: `\`${strap.name}\` is hitched end to end, and at \`${anchor.name}\`, ${form}, something goes round`,
        help: 'write `hitch  basket` with both ends in one shackle, or `choker`, which counts half',
        ...(strap.gearFacts === undefined ? {} : { related: [{ place: statementOf(strap.gearFacts.block, 'hitch')!.place, message: 'how it is hitched' }] }),
      }));
      const length = strap.gearFacts === undefined ? undefined : maybeFact(strap.gearFacts.block, 'length');
      const girth = anchor.declaration === undefined ? undefined : maybeFact(anchor.declaration.block, 'girth');
      if (length === undefined || girth === undefined) continue;
      judge.atLeast(length, girth, place, (own, around) => ({
        place,
        message: `\`${strap.name}\` is ${show(own)} long, and does not reach round \`${anchor.name}\` of ${show(around, { unit: unitOf(own), careful: 'up' })}`,
        help: 'use a strap that goes round with its ends close together',
      }));
    }
  },
});
