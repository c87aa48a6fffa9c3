import { missingFact, statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const kineticInWinchChain = defineRule({
  name: 'kinetic-in-winch-chain',
  on: 'chain',
  severity: 'warning',
  summary: 'A kinetic strap is part of a chain that a winch loads.',
  why: 'it stores the energy of the pull and gives it back at once when anything lets go; a winch needs none of that stretch',
  source: 'common practice: kinetic rope and straps are for a moving vehicle, never for a winch pull',
  bad: `${frontWinch}
${mainLine}
${bow22}
strap trunk {
  kind    kinetic
  length  3 m
  wll     4 t
}

${larch}
${reachByTrunk}`,
  good: `${frontWinch}
${mainLine}
${bow22}
strap trunk {
  kind    static
  length  3 m
  wll     4 t
}

${larch}
${reachByTrunk}`,
  check(chain, judge) {
    if (chain.winch === undefined) return;
    for (const link of chain.links) {
      if (link.gearFacts?.head !== 'strap') continue;
      const { block } = link.gearFacts;
      const kind = statementOf(block, 'kind');
      if (kind === undefined || wordOf(kind.values, 'kind') === undefined) {
        judge.cannot({ ...missingFact(block, 'kind'), says: `whether \`${link.name}\` stretches is not given`, help: 'add `kind  static` or `kind  kinetic` from its label' }, link.place);
        continue;
      }
      judge.holds(wordOf(kind.values, 'kind') !== 'kinetic', () => ({
        place: link.place,
        message: `\`${link.name}\` is kinetic, and \`${chain.winch!.name}\` loads it`,
        help: 'use a static strap or an extension line',
        related: [{ place: kind.place, message: 'its kind' }],
      }));
    }
  },
});
