import { pullExample, pullWith } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const pullWithoutLoad = defineTextRule({
  name: 'pull-without-load',
  severity: 'error',
  summary: 'Nothing in a pull is fast to what is meant to move.',
  why: 'the winch would pull two things that stand',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ pull: pullWith({ load: 'load      dipper' }), more: `vehicle dipper {
  mass  2,400 kg
}
` }),
  good: pullExample(),
});
