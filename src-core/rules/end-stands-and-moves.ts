import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

const bridle = (other: string): string => `chain to-the-larch {
  main outboard -> bow-22 -> gathers
  gathers -> larch
  gathers -> ${other}
}
`;
const ring = `ring gathers {
  wll  8 t
}
`;

const staple = (name: string): string => `anchor ${name} {
  kind     ground-anchor
  holding  60 kN "tested 2026-05-02"
}
`;

export const endStandsAndMoves = defineTextRule({
  name: 'end-stands-and-moves',
  severity: 'error',
  summary: 'The far end of a pull\'s line is fast to what stands and to what moves with the load.',
  why: 'a leg that moves along goes slack or ties the load down, and the others then carry more than their share',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ chain: bridle('plover bow'), more: ring, pull: pullWith({ bridle: 'bridle    40 deg' }) }),
  good: pullExample({ chain: bridle('birch'), anchor: staple('larch'), more: `${ring}
${staple('birch')}`, pull: pullWith({ bridle: 'bridle    40 deg' }) }),
});
