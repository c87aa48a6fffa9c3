import { isWeightAlone } from '../assess/pull-resistance.ts';
import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const chainWithoutAnchor = defineRule({
  name: 'chain-without-anchor',
  on: 'chain',
  severity: 'information',
  summary: 'A chain leads to no anchor and no vehicle.',
  why: 'what the far end is made fast to, and what that holds, is not judged',
  source: 'our own careful choice, because the anchor is the link that is trusted most and known least',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> trunk
}
`,
  good: soundChain,
  check(chain, judge, { reader }) {
    // A load that is no vehicle, such as a log, hangs at the end itself.
    if (reader.pullsThrough(chain.name).some(isWeightAlone)) return;
    if (chain.links.length === 0 || chain.links.some((link) => link.sort === 'other')) return;
    judge.holds(chain.links.some((link) => link.sort === 'anchor' || link.sort === 'vehicle'), () => ({
      place: chain.block.namePlace,
      message: `what the far end of \`${chain.name}\` is made fast to is not given`,
      help: 'end a route with an `anchor`, or with a vehicle and its point; where the load itself hangs there, as a log does, nothing is to be done',
    }));
  },
});
