import { defineTextRule } from './rule.ts';

export const missingDate = defineTextRule({
  name: 'missing-date',
  severity: 'error',
  summary: 'A logbook entry lacks its date.',
  why: 'the state of the line on a day cannot be worked out from an entry without one',
  source: 'the grammar of the language',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  inspected  "outside in"
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-06-21  inspected  "outside in"
}
`,
});
