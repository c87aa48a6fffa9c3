import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const samePlace = defineTextRule({
  name: 'same-place',
  severity: 'error',
  summary: 'Two things that the line runs between stand in the same place.',
  why: 'a part of no length has no direction, and nothing can be said of the loads at its ends',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ pull: pullWith({ stands: 'stands    larch ahead 0 m' }) }),
  good: pullExample({ pull: pullWith({ stands: 'stands    larch ahead 21 m' }) }),
});
