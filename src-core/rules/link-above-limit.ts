import { bow22, larch, mainLine, reachByTrunk, soundChain } from './example-blocks.ts';
import { loadAndLimit, sourceOf } from './force-text.ts';
import { breaksUnder, byAngle, eachLink, isOwnVehicle, lessPull, limitWord, loadOn, turnedClause } from './link-load.ts';
import { defineRule } from './rule.ts';

export const linkAboveLimit = defineRule({
  name: 'link-above-limit',
  on: 'chain',
  severity: 'error',
  summary: 'The load on a link of a chain is above its working limit.',
  why: 'between working limit and breaking lies all that is not counted: shock, wear, side load',
  source: 'the maker\'s working load limit; WAC 296-155-33900(3)(b), the rated load of hardware is not exceeded',
  citesRating: true,
  bad: `winch bow-winch {
  rated    25 kN
  carries  main
}

${mainLine}
${bow22}
strap trunk {
  length  3 m
  wll     2 t
}

${larch}
${reachByTrunk}`,
  good: soundChain,
  check(chain, judge) {
    eachLink(chain, 'workingLimit', (link) => {
      if (link.limitFrom === 'line factor' || link.limitFrom === 'breaking strength' || breaksUnder(link)) return undefined;
      if (isOwnVehicle(chain, link)) {
        judge.cannot({ key: `own vehicle ${link.name} ${link.place.start}`, says: `\`${link.name}\` is the vehicle that \`${chain.winch!.name}\` stands on, so the chain alone does not tell what it has to hold`, help: 'go by a `pull` through this chain, which does', place: link.place }, link.place);
        return undefined;
      }
      return judge.atMost(link.load, link.workingLimit, link.place, (load, limit) => {
        const text = loadAndLimit(load, limit);
        const what = limitWord(link);
        // A vehicle that holds by its tyres slides before anything breaks; what it holds of a pull is judged there.
        const slides = link.sort === 'anchor' && link.limitSays === 'braked vehicle';
        return {
          place: link.place,
          ...(slides ? { severity: 'warning' as const } : byAngle(link, load, limit)),
          message: `${loadOn(link)}${text.load}, above its ${what} of ${text.limit}${turnedClause(link)}`,
          help: `use ${what === 'holding power' ? 'an anchor' : link.pointOf !== undefined ? 'a point' : 'one'} with a ${what} of ${text.most} or more${lessPull(chain)}`,
          source: link.limitFrom === 'table' ? sourceOf(limit) : undefined,
        };
      }, link.doubt);
    });
  },
});
