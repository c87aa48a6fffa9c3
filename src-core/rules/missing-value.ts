import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const missingValue = defineTextRule({
  name: 'missing-value',
  severity: 'error',
  summary: 'A statement lacks a value that it needs.',
  why: 'without it the statement says nothing',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll
}
`,
  good: bow22WithoutPin,
});
