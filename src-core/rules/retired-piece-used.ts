import { printDay } from '../model/day.ts';
import { bow19, bow22, frontWinch, larch, mainLine, reachByTail, tailLine, trunk } from './example-blocks.ts';
import { isLineOnDrum } from './link-load.ts';
import { defineRule } from './rule.ts';

export const retiredPieceUsed = defineRule({
  name: 'retired-piece-used',
  on: 'chain',
  severity: 'error',
  summary: 'A chain uses a piece that is retired.',
  why: 'a line is retired because nobody can say what it still holds',
  source: 'common practice: what is retired is not loaded again',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
line tail {
  material  HMPE
  strands   12
  diameter  10 mm
  length    12 m
  breaking  92 kN
  inboard   eye bury 72 d taper 24 d stitched
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  retired  "melted at the fairlead"
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
${tailLine}`,
  check(chain, judge) {
    const seen = new Set<string>();
    for (const link of chain.links) {
      // What the winch carries has a finding there; the two ends of a piece are said once.
      if (link.piece === undefined || isLineOnDrum(chain, link) || seen.has(link.piece.name)) continue;
      seen.add(link.piece.name);
      const { retired, name } = link.piece;
      judge.holds(retired === undefined, () => ({
        place: link.place,
        message: `\`${name}\` was retired on ${printDay(retired!.day)} and stands in \`${chain.name}\``,
        help: 'put another line in its place',
        related: [{ place: retired!.statement.place, message: 'retired here' }],
      }));
    }
  },
});
