import type { AssessedLink } from '../assess/assess-chain.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk, trunk } from './example-blocks.ts';
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
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}`,
  check(chain, judge) {
    for (const route of chain.routes) {
      const seen = new Map<string, AssessedLink>();
      for (const link of route.links) {
        const before = seen.get(link.key);
        judge.holds(before === undefined, () => ({
          place: link.place,
          message: `this route comes back to \`${link.name}\``,
          help: 'name the other piece of gear that is meant, or remove it',
          related: [{ place: before!.place, message: 'it stands here already' }],
        }));
        if (before === undefined) seen.set(link.key, link);
      }
    }
  },
});
