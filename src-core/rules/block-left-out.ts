import { linkName } from '../assess/pull-run.ts';
import { nameOf } from '../model/bound.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

const more = `anchor rock {
  kind     ground-anchor
  holding  200 kN "tested 2026-05-02"
}

shackle bow-32 {
  form  bow
  body  32 mm
  pin   35 mm
  wll   12 t
}

block snatch {
  sheave  100 mm
  takes   12 mm
  wll     12 t
}
`;
const anchor = `anchor larch {
  kind     tree
  holding  200 kN "tested 2026-05-02"
}
`;
const chain = `chain to-the-larch {
  main outboard -> bow-22 -> trunk -> larch
  snatch -> bow-32 -> rock
}
`;

export const blockLeftOut = defineRule({
  name: 'block-left-out',
  on: 'pull',
  severity: 'warning',
  summary: 'The chain of a pull holds a block, and neither this pull nor another one leads its line over it.',
  why: 'the load on the block and on what holds it is not in the figures of the pull, nor is the way round it',
  source: 'our own careful choice, because a `via` that was forgotten makes a pull look easier',
  bad: pullExample({ more, anchor, chain }),
  good: pullExample({ more, anchor, chain, pull: pullWith({ via: 'via       snatch fixed angle 30 deg after 12 m' }) }),
  check({ name, block, rigging, chain: through }, judge, { reader }) {
    for (const { run, holder, name: own, place } of rigging.blocks) {
      if (run === undefined && holder !== undefined) judge.cannot({ key: `gear of ${own} in ${name}`, says: `by what \`${own}\` hangs on \`${holder.name}\` is not given`, help: `write it as a route of the chain, such as \`${own} -> bow-22 -> trunk -> ${holder.name}\``, place }, place);
    }
    const led = new Set(rigging.blocks.map((b) => b.name));
    // A chain may be rigged for several pulls: what another one leads its line over is not forgotten.
    const others = through === undefined ? [] : reader.pullsThrough(through.name);
    for (const { statements } of others) for (const { definition, values } of statements) if (definition.head === 'via') led.add(nameOf(values, 'block')?.name ?? '');
    for (const { links } of through?.routes ?? []) {
      for (const link of links) {
        const own = link.gear === 'block' ? linkName(link) : undefined;
        if (own === undefined) continue;
        judge.holds(led.has(own), () => ({
          place: block.namePlace,
          message: `\`${own}\` hangs in \`${through!.name}\`, and \`${name}\` does not lead its line over it`,
          help: `add \`via  ${own}\` with how it is made fast, or take its route out of the chain`,
          related: [{ place: link.place, message: 'where it hangs' }],
        }));
      }
    }
  },
});
