import { pullExample, pullWith } from './example-pull.ts';
import { judgeLoads, overLimit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const blockOverloaded = defineRule({
  name: 'block-overloaded',
  on: 'pull',
  severity: 'error',
  summary: 'A pull loads a block above its working limit.',
  why: 'a block carries both parts of the line: up to twice the line pull',
  source: 'the maker\'s working load limit; load on a block by the angle between the parts, rigging catalogues',
  citesRating: true,
  bad: pullExample({ chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`, pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch', reach: 'reach     12 m' }), more: `block snatch {
  efficiency  92 %
  wll         3 t
}
` }),
  good: pullExample({ chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`, pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch', reach: 'reach     12 m' }), more: `block snatch {
  efficiency  92 %
  wll         12 t
}
` }),
  check(pull, judge) {
    judgeLoads(pull, judge, (loaded) => loaded.sort === 'block', (loaded, load, limit) => overLimit(pull, loaded, load, limit, 'load', 'working limit', 'use a stronger block, or open the angle between the parts and write `angle`'));
  },
});
