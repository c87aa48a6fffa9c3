import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const blockUsedTwice = defineTextRule({
  name: 'block-used-twice',
  severity: 'error',
  summary: 'The line runs over one block twice.',
  why: 'a block has one sheave: two parts on it ride on each other',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`, pull: pullWith({ via: 'via       snatch fixed on larch\n  via       snatch fixed on larch' }), more: `block snatch {
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
