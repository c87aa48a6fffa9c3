import { pullExample, pullWith } from './example-pull.ts';
import { judgeLoads, overLimit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const pointOverloaded = defineRule({
  name: 'point-overloaded',
  on: 'pull',
  severity: 'error',
  summary: 'A pull loads a recovery point of a vehicle above its rating.',
  why: 'a point that tears out flies at the far end of the line',
  source: 'the maker\'s rating of the point',
  citesRating: true,
  bad: pullExample({ vehicle: `vehicle plover {
  mass   2,650 kg
  point  bow rated 1 t
}
`, chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
`, pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch', reach: 'reach     12 m' }), more: `block snatch {
  efficiency  92 %
  wll         12 t
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
    judgeLoads(pull, judge, (loaded) => loaded.sort === 'point', (loaded, load, limit) => overLimit(pull, loaded, load, limit, 'load', 'rating', 'use a stronger point, or two with a bridle'));
  },
});
