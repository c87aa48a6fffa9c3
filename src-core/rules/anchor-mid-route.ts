import { bow22, frontWinch, larch, mainLine, soundChain, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const anchorMidRoute = defineRule({
  name: 'anchor-mid-route',
  on: 'chain',
  severity: 'warning',
  summary: 'A route goes on behind an anchor or a vehicle.',
  why: 'what stands behind an anchor is not loaded by this pull, so the order of the links is wrong or the anchor is',
  source: 'geometry: a route ends at what holds it',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> larch -> trunk
}
`,
  good: soundChain,
  check(chain, judge) {
    for (const route of chain.routes) {
      route.links.forEach((link, i) => {
        if (link.sort !== 'anchor' && link.sort !== 'vehicle') return;
        judge.holds(i === 0 || i === route.links.length - 1, () => ({ place: link.place, message: `\`${link.name}\` stands in the middle of a route, where ${link.sort === 'anchor' ? 'an anchor' : 'a vehicle'} ends it`, help: 'put it at the end, or write what hangs behind it as a route of its own' }));
      });
    }
  },
});
