import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const unknownUnit = defineTextRule({
  name: 'unknown-unit',
  severity: 'error',
  summary: 'A unit is not one that the language knows.',
  why: 'a value in an unknown unit is no value',
  source: 'our own careful choice, because a number read in the wrong unit is wrong by a factor',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   65 kNn
}
`,
  good: bow22WithoutPin,
});
