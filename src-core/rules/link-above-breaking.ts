import { isNear } from '../base/compare.ts';
import { mostOf } from '../mechanics/derivation.ts';
import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { loadAndLimit } from './force-text.ts';
import { byAngle, eachLink, lessPull, loadOn, turnedClause } from './link-load.ts';
import { defineRule } from './rule.ts';

export const linkAboveBreaking = defineRule({
  name: 'link-above-breaking',
  on: 'chain',
  severity: 'error',
  summary: 'The load on a link is above what it breaks at.',
  why: 'it breaks, and everything between it and the winch flies',
  source: 'the breaking strength of its tag, less what its damage and its ends have cost',
  citesRating: true,
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> loop -> trunk -> larch
}

soft-shackle loop {
  diameter  5 mm
  breaking  18 kN
}
`,
  good: soundChain,
  check(chain, judge) {
    eachLink(chain, 'breaking', (link) => {
      if (!link.breakingGiven) return undefined;
      return judge.atMost(link.load, link.breaking, link.place, (load, breaking) => {
        const text = loadAndLimit(load, breaking);
        const weakest = link.piece?.weakest;
        const most = weakest === undefined ? undefined : mostOf(weakest.strength);
        const where = weakest !== undefined && most !== undefined && isNear(most.amount.low, breaking.amount.low) && weakest.name !== 'line without damage' ? `, at its ${weakest.name}` : '';
        return {
          place: link.place,
          ...byAngle(link, load, breaking),
          message: `${loadOn(link)}${text.load}, above the ${text.limit} at which it breaks${where}${turnedClause(link)}`,
          help: `take it out of the chain${lessPull(chain)}`,
        };
      }, link.doubt);
    });
  },
});
