import { defineTextRule } from './rule.ts';

export const valueOutOfRange = defineTextRule({
  name: 'value-out-of-range',
  severity: 'error',
  summary: 'A value is beyond anything that can be meant.',
  why: 'a digit or a unit is wrong, and what is computed from it would be wrong with it',
  source: 'our own careful choice, because a limit of absurdity catches slips that no other check sees',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    0 m
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
});
