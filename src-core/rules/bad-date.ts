import { defineTextRule } from './rule.ts';

export const badDate = defineTextRule({
  name: 'bad-date',
  severity: 'error',
  summary: 'A date is no day of the calendar, or is not written year-month-day.',
  why: 'an entry without its day has no place in the logbook',
  source: 'the grammar of the language',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-02-31  inspected
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-02-28  inspected
}
`,
});
