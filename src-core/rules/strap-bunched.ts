import { maybeFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { frontWinch, larch, mainLine, reachByTrunk } from './example-blocks.ts';
import { shackleJoints } from './shackle-joints.ts';
import { defineRule } from './rule.ts';

export const strapBunched = defineRule({
  name: 'strap-bunched',
  on: 'chain',
  severity: 'warning',
  summary: 'A strap is wider than the shackle it lies in.',
  why: 'bunched webbing carries by its edges, and they tear one after the other',
  source: 'common practice: webbing lies flat over its whole width in what it hangs by',
  bad: `${frontWinch}
${mainLine}
shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  inside  37 mm
}

strap trunk {
  length  3 m
  width   75 mm
  wll     4 t
}

${larch}
${reachByTrunk}`,
  good: `${frontWinch}
${mainLine}
shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  inside  80 mm
}

strap trunk {
  length  3 m
  width   75 mm
  wll     4 t
}

${larch}
${reachByTrunk}`,
  check(chain, judge) {
    for (const { shackle, other, place } of shackleJoints(chain)) {
      const inside = shackle.gearFacts?.inside;
      const width = other.gearFacts?.head === 'strap' ? maybeFact(other.gearFacts.block, 'width') : undefined;
      if (inside === undefined || width === undefined) continue;
      judge.atMost(width, inside, place, (strap, opening) => ({
        place,
        message: `\`${other.name}\` is ${show(strap)} wide and lies in ${show(opening, { unit: unitOf(strap) })} of \`${shackle.name}\`: it bunches`,
        help: `use a wider shackle, or a strap of ${show(opening, { unit: unitOf(strap) })} or less`,
      }));
    }
  },
});
