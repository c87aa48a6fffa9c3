import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const unknownBlock = defineTextRule({
  name: 'unknown-block',
  severity: 'error',
  summary: 'A block begins with a word that names no block of the language.',
  why: 'nothing inside it is read',
  source: 'the grammar of the language',
  bad: `shakle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
  good: bow22WithoutPin,
});
