import type { AssessedLink } from '../assess/assess-chain.ts';
import { holderOf } from '../assess/pull-rigging.ts';
import { allLinks, linkName, type Run } from '../assess/pull-run.ts';
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
const chain = (holder: string): string => `chain to-the-larch {
  main outboard -> bow-22 -> trunk -> larch
  snatch -> ${holder}
}
`;
const pull = pullWith({ via: 'via       snatch fixed on rock angle 30 deg after 12 m' });

export const blockHeldElsewhere = defineRule({
  name: 'block-held-elsewhere',
  on: 'pull',
  severity: 'error',
  summary: 'A pull and its chain say of one block, or of one piece of gear, that different things hold it.',
  why: 'the load on the block goes into one anchor, and it is judged at the other',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ more, anchor, pull, chain: chain('bow-32 -> larch') }),
  good: pullExample({ more, anchor, pull, chain: chain('bow-32 -> rock') }),
  check({ rigging, run, chain: through }, judge) {
    // One thing that is in two runs holds both at one place, or is written for two things.
    const runs = [...(run === undefined ? [] : [run]), ...rigging.blocks.flatMap((b) => (b.run === undefined ? [] : [b.run]))];
    const first = new Map<string, { readonly link: AssessedLink; readonly run: Run }>();
    for (const each of runs) {
      for (const link of allLinks(each)) {
        const before = link.sort === 'gear' && link.link.link === 'name' ? first.get(link.name) : undefined;
        if (before === undefined) first.set(link.name, { link, run: each });
        else if (before.run !== each) {
          const [a, b] = [before.run, each].map((r) => holderOf(r)?.name);
          judge.holds(a === b || a === undefined || b === undefined, () => ({
            place: link.place,
            message: `\`${link.name}\` hangs on \`${a!}\` and on \`${b!}\` at once`,
            help: 'name the other piece of gear that is meant: one thing stands in one place',
            related: [{ place: before.link.place, message: 'it stands here already' }],
          }));
        }
      }
    }
    for (const b of rigging.blocks) {
      const on = nameOf(b.statement.values, 'anchor');
      if (on === undefined || b.run === undefined) continue;
      const inRoute = b.run.links.some((link) => (linkName(link) ?? link.name) === on.name);
      const vehicle = b.holders.find((h) => h.name === on.name)?.vehicle;
      // A parked vehicle is the same thing under its name as an anchor.
      const other = b.holders.find((h) => h.name !== on.name && (h.vehicle === undefined || h.vehicle !== vehicle));
      if (other === undefined) continue;
      judge.holds(inRoute, () => ({
        place: on.place,
        message: `\`${b.name}\` is made fast on \`${on.name}\`, and its route in \`${through?.name ?? 'the chain'}\` leads to \`${other.name}\``,
        help: 'correct the one or the other',
        related: [{ place: other.place, message: 'where its route ends' }],
      }));
    }
  },
});
