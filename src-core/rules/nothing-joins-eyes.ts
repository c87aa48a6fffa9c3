import type { AssessedLink } from '../assess/assess-chain.ts';
import { bearingName } from '../assess/chain-joints.ts';
import { frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const solid: ReadonlySet<string> = new Set(['tube', 'round', 'heart']);

/** An eye round a thimble: closed for good, and nothing is hitched through it and back. */
const isThimbled = ({ end }: AssessedLink): boolean => end?.facts.form === 'eye' && solid.has(end.facts.thimble ?? '');
const isClosed = (link: AssessedLink): boolean => link.end?.facts.form === 'eye' || link.gear === 'strap' || link.gear === 'ring';

export const nothingJoinsEyes = defineRule({
  name: 'nothing-joins-eyes',
  on: 'chain',
  severity: 'warning',
  summary: 'An eye round a thimble follows on another closed eye, and nothing between them opens.',
  why: 'two closed eyes do not come together: whatever joins them on the ground is not in the figures',
  source: 'common practice: closed eyes are joined by a shackle, which opens',
  bad: `${frontWinch}
${mainLine}
${trunk}
${larch}
chain reach {
  main outboard -> trunk -> larch
}
`,
  good: soundChain,
  check(chain, judge) {
    for (const { first, second, place } of chain.joints) {
      if (!isClosed(first) || !isClosed(second)) continue;
      judge.holds(!isThimbled(first) && !isThimbled(second), () => ({
        place,
        message: `${bearingName(first)} and ${bearingName(second)} are both closed, and nothing joins them`,
        help: 'write the shackle that joins them between the two',
      }));
    }
  },
});
