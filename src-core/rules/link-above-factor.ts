import type { AssessedLink } from '../assess/assess-chain.ts';
import { showValue, unitOf } from '../assess/show.ts';
import { isUnknown, mostOf } from '../mechanics/derivation.ts';
import { bow22, frontWinch, larch, mainLine, trunk } from './example-blocks.ts';
import { limitText, loadAndLimit, sourceOf } from './force-text.ts';
import { breaksUnder, eachLink, lessPull, loadOn, turnedClause } from './link-load.ts';
import { defineRule } from './rule.ts';

/** A line whose maker's limit is written is held down by its weakest place, and a splice that is not whole is the cheapest to mend. */
function remedyOf({ sort, piece, end }: AssessedLink): string {
  if (sort !== 'line') return 'use a stronger one, or write the maker\'s own limit as `wll`';
  if (piece?.line.working === undefined) return 'use a stronger one, or write the maker\'s own limit as `working`';
  return end?.buried === undefined ? 'use a stronger one, or cut out what weakens it' : 'splice it with the full bury and taper, cut out what weakens it, or use a stronger one';
}

export const linkAboveFactor = defineRule({
  name: 'link-above-factor',
  on: 'chain',
  severity: 'warning',
  summary: 'The load on a link is above its breaking strength over the factor of practice.',
  why: 'the factor is what is left for shock, wear and all that the tag does not know',
  source: 'UFC 4-159-03 (2005), table 3-7, for lines; the design factor of practice for gear, unless a practice block says otherwise',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> loop -> trunk -> larch
}

soft-shackle loop {
  diameter  8 mm
  breaking  70 kN
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> loop -> trunk -> larch
}

soft-shackle loop {
  diameter  11 mm
  breaking  140 kN
}
`,
  check(chain, judge, { practice }) {
    eachLink(chain, 'workingLimit', (link) => {
      if ((link.limitFrom !== 'line factor' && link.limitFrom !== 'breaking strength') || breaksUnder(link)) return undefined;
      const factor = link.sort === 'line' ? practice.value('line-factor') : practice.value('design-factor', link.gear);
      return judge.atMost(link.load, link.workingLimit, link.place, (load, limit) => {
        const text = loadAndLimit(load, limit);
        const most = mostOf(link.breaking);
        const breaking = most === undefined ? '' : ` of ${limitText(most, unitOf(limit) ?? unitOf(load))}`;
        return {
          place: link.place,
          message: `${loadOn(link)}${text.load}, above the ${text.limit} that a factor of ${showValue(factor)} leaves of its breaking strength${breaking}${turnedClause(link)}`,
          help: `${remedyOf(link)}${lessPull(chain)}`,
          source: isUnknown(factor) ? undefined : sourceOf(factor),
        };
      }, link.doubt);
    });
  },
});
