import { statementOf } from '../assess/facts.ts';
import { nameOf, quantityOf, type BoundBlock } from '../model/bound.ts';
import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

/** A load that has a weight and is no vehicle, such as a log, hangs at the end itself. */
const drawsWeight = (pull: BoundBlock): boolean => {
  const load = statementOf(pull, 'load');
  return load !== undefined && nameOf(load.values, 'vehicle') === undefined && quantityOf(load.values, 'weight') !== undefined;
};

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
    if (reader.pullsThrough(chain.name).some(drawsWeight)) return;
    if (chain.links.length === 0 || chain.links.some((link) => link.sort === 'other')) return;
    judge.holds(chain.links.some((link) => link.sort === 'anchor' || link.sort === 'vehicle'), () => ({
      place: chain.block.namePlace,
      message: `what the far end of \`${chain.name}\` is made fast to is not given`,
      help: 'end a route with an `anchor`, or with a vehicle and its point; where the load itself hangs there, as a log does, nothing is to be done',
    }));
  },
});
