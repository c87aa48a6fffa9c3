import { carriedName } from '../assess/assess-winch.ts';
import { closedAt, runFromLine } from '../assess/pull-run.ts';
import type { AssessedLink } from '../assess/assess-chain.ts';
import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const chainClosesOnItself = defineRule({
  name: 'chain-closes-on-itself',
  on: 'chain',
  severity: 'error',
  summary: 'A route comes back to something it has passed already.',
  why: 'one thing cannot hang on itself; one of the names is wrong',
  source: 'geometry: a route runs from the winch to the anchor and does not come back',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> trunk -> bow-22 -> larch
}
`,
  good: soundChain,
  check(chain, judge) {
    let isSaid = false;
    for (const route of chain.routes) {
      const seen = new Map<string, AssessedLink>();
      for (const link of route.links) {
        const before = seen.get(link.key);
        isSaid ||= before !== undefined;
        judge.holds(before === undefined, () => ({
          place: link.place,
          message: `this route comes back to \`${link.name}\``,
          help: 'name the other piece of gear that is meant, or remove it',
          related: [{ place: before!.place, message: 'it stands here already' }],
        }));
        if (before === undefined) seen.set(link.key, link);
      }
    }
    if (isSaid) return;
    // One route leads into another, and that one back to what was passed.
    const again = closedAt(runFromLine(chain, chain.winch === undefined ? undefined : carriedName(chain.winch.block), new Set()));
    if (again === undefined) return;
    const before = chain.links.find((link) => link.key === again.key && link !== again);
    judge.holds(false, () => ({
      place: again.place,
      message: `\`${chain.name}\` comes back to \`${again.name}\``,
      help: 'name the other piece of gear that is meant: one thing stands in one place',
      related: before === undefined ? [] : [{ place: before.place, message: 'it stands here already' }],
    }));
  },
});
