import type { AssessedLink } from '../assess/assess-chain.ts';
import { maybeFact, statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { basketLength } from '../mechanics/basket-length.ts';
import { asGiven } from '../mechanics/derivation.ts';
import { widestBridle } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { widest_rad } from './bridle-too-wide.ts';
import { plainForm } from './nothing-round-anchor.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk, soundChain } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const strapOf = (first: AssessedLink, second: AssessedLink): readonly [strap: AssessedLink, anchor: AssessedLink] | undefined =>
  first.gear === 'strap' && plainForm(second) !== undefined ? [first, second] : second.gear === 'strap' && plainForm(first) !== undefined ? [second, first] : undefined;

export const strapNotRoundAnchor = defineRule({
  name: 'strap-not-round-anchor',
  on: 'chain',
  severity: 'warning',
  summary: 'A strap at a tree, a rock or a log is hitched end to end, or too short to go round it with its legs 120° apart.',
  why: 'a strap holds a trunk as a basket or as a choker: a straight one does not hold it, and one that is pulled together round it spreads what joins its ends',
  source: `common practice: a sling holds what it goes round; ${printSource(sources['29-cfr-1918-app-ii'])}: no basket is rated with its legs more than 60° from the pull`,
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
      const needed = asGiven(basketLength({ C: girth, θ: { amount: exactly(widest_rad), kind: 'angle', origin: { from: 'constant', source: widestBridle } } }));
      judge.atLeast(length, needed, place, (own, around) => ({
        place,
        message: `\`${strap.name}\` is ${show(own)} long, below the ${show(around, { unit: unitOf(own), careful: 'up' })} that reach round \`${anchor.name}\` with 120° between the legs`,
        help: 'use a longer strap: the wider its legs stand, the more each bears',
      }));
    }
  },
});
