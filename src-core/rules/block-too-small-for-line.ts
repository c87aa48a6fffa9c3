import { maybeFact, missingFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk, trunk } from './example-blocks.ts';
import { linesOverBlocks } from './lines-over-blocks.ts';
import { defineRule } from './rule.ts';

export const blockTooSmallForLine = defineRule({
  name: 'block-too-small-for-line',
  on: 'block',
  heads: ['chain', 'pull'],
  severity: 'error',
  summary: 'A line is thicker than the block takes.',
  why: 'it rides on the cheeks, which wear it and can let it jump between sheave and cheek',
  source: 'the maker\'s figure for the line that the block takes',
  citesRating: true,
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}
block snatch {
  sheave  100 mm
  takes   8 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}
block snatch {
  sheave  100 mm
  takes   12 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  check(block, judge, assessing) {
    for (const { gear, piece, place } of linesOverBlocks(block, assessing)) {
      const takes = maybeFact(gear.block, 'takes');
      if (takes === undefined) {
        judge.cannot({ ...missingFact(gear.block, 'takes'), says: `the largest line that \`${gear.name}\` takes is not given` }, place);
        continue;
      }
      judge.atMost(piece.line.diameter, takes, place, (d, most) => ({
        place,
        message: `\`${piece.name}\` is ${show(d)} thick, above the ${show(most, { unit: unitOf(d) })} that \`${gear.name}\` takes`,
        help: 'use a block made for the line',
      }));
    }
  },
});
