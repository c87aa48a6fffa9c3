import { missingFact } from '../assess/facts.ts';
import { bow22, frontWinch, larch, mainLine, trunk } from './example-blocks.ts';
import { listed, neighboursOf } from './neighbours.ts';
import { defineRule } from './rule.ts';

export const joinsMoreThanTwo = defineRule({
  name: 'joins-more-than-two',
  on: 'chain',
  severity: 'warning',
  summary: 'Gear that is made to join two things joins more.',
  why: 'the third one pulls it from the side, for which it has no limit',
  source: 'common practice: a ring or a bow shackle collects several legs; a dee shackle, a hook, a strap end or a soft shackle takes two',
  bad: `${frontWinch}
${mainLine}
shackle bow-22 {
  form  dee
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> trunk -> larch
  bow-22 -> branch -> rock
}

strap branch {
  length  2 m
  wll     4 t
}

anchor rock {
  kind     rock
  holding  40 kN "tested 2026-05-02"
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> trunk -> larch
  bow-22 -> branch -> rock
}

strap branch {
  length  2 m
  wll     4 t
}

anchor rock {
  kind     rock
  holding  40 kN "tested 2026-05-02"
}
`,
  check(chain, judge) {
    for (const link of chain.links) {
      const ofNoForm = link.gear === 'shackle' && link.gearFacts?.form === undefined ? link.gearFacts?.block : undefined;
      const two = link.gear === 'strap' || link.gear === 'soft-shackle' || link.gear === 'hook' || (link.gear === 'shackle' && link.gearFacts?.form === 'dee');
      if (!two && ofNoForm === undefined) continue;
      const partners = neighboursOf(chain, link);
      if (ofNoForm !== undefined) {
        if (partners.length > 2) judge.cannot({ ...missingFact(ofNoForm, 'form'), says: `form of \`${link.name}\` is not given, and it joins ${listed(partners)}`, help: 'add `form`: a bow shackle collects several legs, a dee takes two' }, link.place);
        continue;
      }
      judge.holds(partners.length <= 2, () => ({
        place: link.place,
        message: `${link.gear === 'shackle' ? 'dee shackle ' : ''}\`${link.name}\` joins ${listed(partners)}`,
        help: 'collect them in a ring or a bow shackle',
        related: partners.slice(2).map((other) => ({ place: other.place, message: 'joined here too' })),
      }));
    }
  },
});
