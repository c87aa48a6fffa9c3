import { pullExample } from './example-pull.ts';
import { defineTextRule } from './rule.ts';

export const chainLongerThanReach = defineTextRule({
  name: 'chain-longer-than-reach',
  severity: 'error',
  summary: 'Extensions in a chain are longer than the distance they are to bridge.',
  why: 'with all line on the drum the chain still hangs slack',
  source: 'arithmetic: lengths along a line add up',
  bad: pullExample({
  chain: `chain to-the-larch {
  main outboard -> bow-22 -> spare -> larch
}
`,
  more: `line spare {
  material  HMPE
  diameter  10 mm
  length    25 m
  breaking  140 kN
  inboard   eye bury 72 d taper 24 d
  outboard  eye bury 72 d taper 24 d
}
`,
}),
  good: pullExample(),
});
