import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const loadNotPulled = defineTextRule({
  name: 'load-not-pulled',
  severity: 'error',
  summary: 'By the plan, the load is pulled away from where it is meant to go.',
  why: 'the places in the plan and the way the load is to go do not fit each other',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ pull: pullWith({ stands: 'stands    larch behind 21 m' }) }),
  good: pullExample({ pull: pullWith({ stands: 'stands    larch ahead 21 m left 0.5 m' }) }),
});
