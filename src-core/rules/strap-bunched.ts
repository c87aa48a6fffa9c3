import type { AssessedLink } from '../assess/assess-chain.ts';
import { maybeFact, missingFact } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { unknown, type Value } from '../mechanics/derivation.ts';
import { frontWinch, larch, mainLine, reachByTrunk } from './example-blocks.ts';
import { shackleJoints } from './shackle-joints.ts';
import { defineRule } from './rule.ts';

/** A shackle whose inside nobody measured; one that a route gives by its size has nowhere to write it. */
function notMeasured({ name, gearFacts, place }: AssessedLink, strap: string): Value {
  const says = `how wide \`${name}\` is inside, where \`${strap}\` lies in it, is not given`;
  if (gearFacts === undefined) return unknown({ key: `inside of ${name} at ${place.start}`, says, help: 'write the shackle as a block with its `inside`, measured', place });
  return unknown({ ...missingFact(gearFacts.block, 'inside'), says, help: 'add `inside`, measured where the strap lies' });
}

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
      const facts = other.gearFacts;
      const width = facts?.head === 'strap' ? maybeFact(facts.block, 'width') : undefined;
      const inside = shackle.gearFacts?.inside ?? (width === undefined ? undefined : notMeasured(shackle, other.name));
      if (width === undefined || inside === undefined) continue;
      judge.atMost(width, inside, place, (strap, opening) => ({
        place,
        message: `\`${other.name}\` is ${show(strap)} wide and lies in ${show(opening, { unit: unitOf(strap) })} of \`${shackle.name}\`: it bunches`,
        help: `use a wider shackle, or a strap of ${show(opening, { unit: unitOf(strap) })} or less`,
      }));
    }
  },
});
