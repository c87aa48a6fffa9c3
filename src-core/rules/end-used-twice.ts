import { bow19, bow22, frontWinch, larch, mainLine, reachByTail, tailLine, trunk } from './example-blocks.ts';
import { listed, neighboursOf } from './neighbours.ts';
import { defineRule } from './rule.ts';

export const endUsedTwice = defineRule({
  name: 'end-used-twice',
  on: 'chain',
  severity: 'warning',
  summary: 'One end of a line is joined to several things.',
  why: 'one eye takes one joint: two pull it open sideways, or the second is meant to be the other end',
  source: 'common practice: what has to be joined to one eye is collected in a ring or a bow shackle',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> tail inboard
  tail inboard -> bow-19 -> trunk -> larch
}

${bow19}
${tailLine}`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
${tailLine}`,
  check(chain, judge) {
    for (const link of chain.links) {
      if (link.sort !== 'line' || link.end === undefined) continue;
      const partners = neighboursOf(chain, link);
      judge.holds(partners.length <= 1, () => ({
        place: link.place,
        message: `\`${link.name}\` is joined to ${listed(partners)}`,
        help: 'correct the end, or collect them in a ring or a bow shackle',
        related: partners.slice(1).map((other) => ({ place: other.place, message: 'joined here too' })),
      }));
    }
  },
});
