import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const repeatedStatement = defineTextRule({
  name: 'repeated-statement',
  severity: 'error',
  summary: 'A statement that may stand once stands twice in its block.',
  why: 'only one of the two can be true, and the file does not say which',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
  wll   4.7 t
}
`,
  good: bow22WithoutPin,
});
