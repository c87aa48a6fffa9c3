import { leastTableDepth_m } from '../assess/assess-anchor.ts';
import { statementOf } from '../assess/facts.ts';
import { show, showLike, unitOf } from '../assess/show.ts';
import { exactly } from '../units/amount.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { defineRule } from './rule.ts';

const log = (depth: string): string => `anchor deadman {
  kind   buried-log
  log    1.2 m face 30 cm
  depth  ${depth}
  slope  3
  soil   loam
}
`;

export const deadmanDepthOutsideTable = defineRule({
  name: 'deadman-depth-outside-table',
  on: 'anchor',
  severity: 'warning',
  summary: 'A log is buried less deep than any published figure begins at.',
  why: 'what a shallower log holds is not published, so it is not judged',
  source: 'US Army TM 5-5420-278-10, WP 0035 table 9',
  bad: log('60 cm'),
  good: log('1.5 m'),
  check({ block, name, log: buried, holdingFrom }, judge) {
    // What somebody answers for is not worked out from its sizes.
    if (buried === undefined || (holdingFrom === 'written' && isUnknown(buried.depth))) return;
    if (isUnknown(buried.depth)) return judge.cannot(buried.depth.unknown, block.namePlace);
    const { depth } = buried;
    const place = statementOf(block, 'depth')!.place;
    judge.holds(!buried.tooShallow, () => ({
      place,
      message: `the log of \`${name}\` lies ${show(depth)} deep, below the ${showLike(exactly(leastTableDepth_m), depth, 'up', unitOf(depth))} where the published table begins`,
      help: 'bury it deeper, or prove it by a pull and write `holding`',
    }));
  },
});
