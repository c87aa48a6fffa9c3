import { maybeFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { bow22, frontWinch, larch, mainLine, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const thimbleTooSmall = defineRule({
  name: 'thimble-too-small',
  on: 'chain',
  severity: 'warning',
  summary: 'A line is thicker than the thimble it lies in takes.',
  why: 'the line stands proud of the groove, is pinched at its edges and jumps out when it goes slack',
  source: 'the maker\'s figure for the line that the thimble takes',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> tube -> bow-22 -> trunk -> larch
}

thimble tube {
  groove  40 mm
  takes   8 mm
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> tube -> bow-22 -> trunk -> larch
}

thimble tube {
  groove  40 mm
  takes   10 mm
}
`,
  check(chain, judge) {
    for (const { first, second } of chain.joints) {
      const [line, thimble] = first.piece === undefined ? [second, first] : [first, second];
      const block = thimble.declaration?.kind === 'thimble' ? thimble.declaration.block : undefined;
      const takes = block === undefined ? undefined : maybeFact(block, 'takes');
      if (line.piece === undefined || takes === undefined) continue;
      const { name } = line.piece;
      judge.atMost(line.piece.line.diameter, takes, thimble.place, (d, most) => ({
        place: thimble.place,
        message: `\`${name}\` is ${show(d)} thick, above the ${show(most, { unit: unitOf(d) })} that \`${thimble.name}\` takes`,
        help: 'use a thimble made for the line',
      }));
    }
  },
});
