import { nameOf } from '../model/bound.ts';
import { pullExample } from './example-pull.ts';
import { tailLine } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const chain = (first: string): string => `chain to-the-larch {
  ${first} outboard -> bow-22 -> trunk -> larch
}
`;

export const lineNotOnWinch = defineRule({
  name: 'line-not-on-winch',
  on: 'pull',
  severity: 'error',
  summary: 'The chain of a pull has lines, and none of them is on the winch that pulls.',
  why: 'what joins the winch to that chain is not written, and so is not judged',
  source: 'geometry: what is not joined is not loaded',
  bad: pullExample({ chain: chain('tail'), more: tailLine }),
  good: pullExample(),
  check({ block, name, winch, chain: through }, judge) {
    const on = winch?.piece?.name;
    if (on !== undefined && through === undefined && nameOf(block.header, 'chain') === undefined) return judge.cannot({ key: `chain of ${name}`, says: `what joins \`${on}\` to the far end in \`${name}\` is not given`, help: 'write it as a `chain`, and add `through` with its name to the pull', place: block.namePlace }, block.namePlace);
    if (winch === undefined || on === undefined || through === undefined || through.winch !== undefined) return;
    const other = through.links.find((link) => link.piece !== undefined);
    if (other === undefined) return;
    judge.holds(through.links.some((link) => link.piece?.name === on), () => ({
      place: block.headPlace,
      message: `\`${name}\` pulls with \`${winch.name}\`, which carries \`${on}\`, and \`${through.name}\` begins with \`${other.piece!.name}\``,
      help: `begin the chain with \`${on} outboard\`, or carry \`${other.piece!.name}\` on the winch`,
    }));
  },
});
