import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const unknownStatement = defineTextRule({
  name: 'unknown-statement',
  severity: 'error',
  summary: 'A block holds a statement that it does not know.',
  why: 'a fact that is not understood is not judged by',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  swl   6.5 t
}
`,
  good: bow22WithoutPin,
});
