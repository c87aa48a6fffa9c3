import { pullExample } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const pullWithoutAnchor = defineTextRule({
  name: 'pull-without-anchor',
  severity: 'error',
  summary: 'Nothing in a pull stands on the ground.',
  why: 'a line that pulls only on what it moves moves nothing',
  source: 'mechanics: forces in balance at every point',
  bad: pullExample({ chain: `chain to-the-larch {
  main outboard -> bow-22 -> plover bow
}
` }),
  good: pullExample(),
});
