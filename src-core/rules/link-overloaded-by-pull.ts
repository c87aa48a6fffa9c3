import { pullExample, pullWith } from './example-pull.ts';
import { judgeLoads, overLimit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const linkOverloadedByPull = defineRule({
  name: 'link-overloaded-by-pull',
  on: 'pull',
  severity: 'error',
  summary: 'A pull loads a piece of gear above its working limit.',
  why: 'between working limit and breaking lies all that is not counted: shock, wear, side load',
  source: 'the maker\'s working load limit; WAC 296-155-33900(3)(b), the rated load of hardware is not exceeded',
  citesRating: true,
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }), gear: `shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  wll     2 t
}
` }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  check(pull, judge) {
    judgeLoads(pull, judge, (loaded) => loaded.sort === 'link', (loaded, load, limit) => overLimit(pull, loaded, load, limit, 'load', 'working limit', 'use one with a higher working limit'));
  },
});
