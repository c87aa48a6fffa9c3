import { defineTextRule } from './rule.ts';

export const wrongDimension = defineTextRule({
  name: 'wrong-dimension',
  severity: 'error',
  summary: 'A value measures something else than the statement takes.',
  why: 'nothing can be computed from a value that measures something else',
  source: 'our own careful choice, because a number read in the wrong unit is wrong by a factor',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 kg
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
});
