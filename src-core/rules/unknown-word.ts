import { defineTextRule } from './rule.ts';

export const unknownWord = defineTextRule({
  name: 'unknown-word',
  severity: 'error',
  summary: 'A word stands where only certain words may stand, and it is none of them.',
  why: 'what was meant cannot be told',
  source: 'the grammar of the language',
  bad: `line main {
  material  HPME
  diameter  10 mm
  length    30 m
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
});
