import { defineTextRule } from './rule.ts';

export const mixedCompound = defineTextRule({
  name: 'mixed-compound',
  severity: 'error',
  summary: 'A value of several units does not go from the larger unit to the smaller.',
  why: '6 in 22 ft may be a slip for 22 ft 6 in, or two values in one',
  source: 'the grammar of the language',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    6 in 98 ft
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    98 ft 6 in
}
`,
});
