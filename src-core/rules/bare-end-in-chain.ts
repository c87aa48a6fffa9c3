import { bow22, frontWinch, larch, reachByTrunk, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const bareEndInChain = defineRule({
  name: 'bare-end-in-chain',
  on: 'chain',
  severity: 'error',
  summary: 'A chain is joined to a bare end of a line.',
  why: 'there is nothing to join to: a bare end holds by a knot at best, and slippery line slips out of its knots',
  source: 'common practice: a line is joined by an eye',
  bad: `${frontWinch}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  bare
}

${bow22}
${trunk}
${larch}
${reachByTrunk}`,
  good: soundChain,
  check(chain, judge) {
    for (const link of chain.links) {
      const { end } = link;
      if (end === undefined) continue;
      judge.holds(end.facts.form !== 'bare', () => ({
        place: link.place,
        message: `\`${link.name}\` is a bare end`,
        help: 'splice an eye there, and write the splice',
        related: [{ place: end.facts.place, message: 'the end was left bare here' }],
      }));
    }
  },
});
