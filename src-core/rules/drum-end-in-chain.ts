import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const drumEndInChain = defineRule({
  name: 'drum-end-in-chain',
  on: 'chain',
  severity: 'error',
  summary: 'A chain is joined to the end of a line that is on the drum.',
  why: 'that end lies under the wraps and cannot be reached, or the two ends are mixed up',
  source: 'geometry: a line hangs from its drum by its inboard end',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main inboard -> bow-22 -> trunk -> larch
}
`,
  good: soundChain,
  check(chain, judge, assessing) {
    for (const link of chain.links) {
      if (link.piece === undefined || link.end?.which !== 'inboard') continue;
      const winch = assessing.reader.winchesCarrying(link.piece.name)[0];
      const { piece } = link;
      judge.holds(winch === undefined, () => ({
        place: link.place,
        message: `the inboard end of \`${piece.name}\` is on the drum of \`${winch!.name ?? 'the winch'}\``,
        help: `write \`${piece.name} outboard\`, or take the line off the drum: remove \`carries\``,
        related: [{ place: winch!.namePlace, message: 'carried here' }],
        fixes: link.link.link === 'name' && link.link.part !== undefined ? [{ title: `Write \`${piece.name} outboard\``, edits: [{ place: link.link.part.place, text: 'outboard' }] }] : [],
      }));
    }
  },
});
