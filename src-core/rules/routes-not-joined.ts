import type { AssessedLink } from '../assess/assess-chain.ts';
import { goesAcross } from '../assess/parted-routes.ts';
import { nameOf } from '../model/bound.ts';
import { bow19, bow22, frontWinch, larch, mainLine, reachByTail, tailLine, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

/** What a link is part of: both ends of a piece are one thing, and so is a vehicle with its points. */
const thing = (link: AssessedLink): string => (link.link.link === 'name' ? link.link.name : link.key);

export const routesNotJoined = defineRule({
  name: 'routes-not-joined',
  on: 'chain',
  severity: 'warning',
  summary: 'A route of a chain hangs on none of the others.',
  why: 'its load does not come from this chain, so it is judged for the wrong one',
  source: 'geometry: what is not joined is not loaded',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> tail inboard
  bow-19 -> trunk -> larch
}

${bow19}
${tailLine}`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
${tailLine}`,
  check(chain, judge, { reader }) {
    const [first, ...rest] = chain.routes;
    if (first === undefined) return;
    const reached = new Set(first.links.map(thing));
    // The line of a pull runs through what its blocks are made fast to.
    for (const pull of reader.pullsThrough(chain.name)) for (const { definition, values } of pull.statements) if (definition.head === 'via') reached.add(nameOf(values, 'anchor')?.name ?? '');
    // What a block hangs on, and what hangs on that, is joined to it: the line that runs through it is the pull's business.
    for (const { links } of rest) if (links[0]?.gear === 'block' || (goesAcross(links) && links.some((link) => link.gear === 'block'))) for (const link of links) reached.add(thing(link));
    let waiting = rest;
    for (;;) {
      const joined = waiting.filter((route) => route.links.some((link) => reached.has(thing(link))));
      if (joined.length === 0) break;
      for (const route of joined) for (const link of route.links) reached.add(thing(link));
      waiting = waiting.filter((route) => !joined.includes(route));
    }
    for (const route of rest) {
      judge.holds(!waiting.includes(route), () => ({ place: route.statement.place, message: `nothing joins this route to the first one of \`${chain.name}\``, help: 'name the link they share in both, or write it as a chain of its own' }));
    }
  },
});
