import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const strayCharacter = defineTextRule({
  name: 'stray-character',
  severity: 'error',
  summary: 'A character stands in a statement that means nothing there.',
  why: 'the rest of the statement may not say what was intended',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll = 6.5 t
}
`,
  good: bow22WithoutPin,
});
