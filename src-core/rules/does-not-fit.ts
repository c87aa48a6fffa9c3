import type { AssessedLink } from '../assess/assess-chain.ts';
import { maybeFact, writtenValue } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import type { Value } from '../mechanics/derivation.ts';
import { newNameOf, quantityOf } from '../model/bound.ts';
import { bow22, frontWinch, larch, mainLine, trunk } from './example-blocks.ts';
import { bars, shackleJoints, thinnest } from './shackle-joints.ts';
import { defineRule } from './rule.ts';

/** The opening that something hangs in, where the file gives one. */
function openingOf(link: AssessedLink): Value | undefined {
  if (bars.includes(link.gear)) return link.gearFacts?.inside;
  if (link.declaration?.kind === 'thimble') return maybeFact(link.declaration.block, 'inside');
  if (link.link.link !== 'name') return undefined;
  const part = link.link.part?.name;
  const point = link.pointOf?.statements.find((s) => s.definition.head === 'point' && newNameOf(s.values, 'name')?.name === part);
  const opening = point === undefined ? undefined : quantityOf(point.values, 'opening');
  return opening === undefined ? undefined : writtenValue(opening);
}

export const doesNotFit = defineRule({
  name: 'does-not-fit',
  on: 'chain',
  severity: 'error',
  summary: 'A shackle, a ring or a hook does not pass the opening it is meant to hang in.',
  why: 'what does not go in is forced in, hung by its tip, or replaced on the spot by something else',
  source: 'geometry: a body passes an opening that is not smaller than itself',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> plover bow
}

vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t opening 18 mm
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach {
  main outboard -> bow-22 -> plover bow
}

vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t opening 24 mm
}
`,
  check(chain, judge) {
    for (const { shackle, other, place } of shackleJoints(chain, bars)) {
      const opening = openingOf(other);
      if (opening === undefined) continue;
      judge.atMost(thinnest(shackle), opening, place, (bar, width) => ({
        place,
        message: `${bar === shackle.gearFacts?.pin ? 'pin' : 'body'} of \`${shackle.name}\` is ${show(bar, { unit: unitOf(width) })}, above the ${show(width)} opening of \`${other.name}\``,
        help: `use a ${shackle.gear} that goes through, strong enough for the load, or join with a soft shackle`,
      }));
    }
  },
});
