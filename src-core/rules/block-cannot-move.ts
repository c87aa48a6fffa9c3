import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const blockCannotMove = defineTextRule({
  name: 'block-cannot-move',
  severity: 'error',
  summary: 'A block is said to travel and is held by something that stands, or the other way round.',
  why: 'whether a block moves with the load decides whether it gains pull',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ pull: pullWith({ via: 'via       snatch travelling on larch' }), more: `block snatch {
  efficiency  92 %
  wll         12 t
}
` }),
  good: pullExample({ chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`, pull: pullWith({ via: 'via       snatch fixed on larch', reach: 'reach     12 m' }), more: `block snatch {
  efficiency  92 %
  wll         12 t
}
` }),
});
