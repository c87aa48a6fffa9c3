import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const bareNumber = defineTextRule({
  name: 'bare-number',
  severity: 'error',
  summary: 'A measured value has no unit.',
  why: 'the same number is another value in another unit, and the one who reads it next cannot ask',
  source: 'our own careful choice, because a number read in the wrong unit is wrong by a factor',
  bad: `shackle bow-22 {
  form  bow
  body  22
  wll   6.5 t
}
`,
  good: bow22WithoutPin,
});
