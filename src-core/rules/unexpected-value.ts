import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const unexpectedValue = defineTextRule({
  name: 'unexpected-value',
  severity: 'error',
  summary: 'A statement holds a value that has no meaning there.',
  why: 'a value that is passed over may be the one that matters',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t tested
}
`,
  good: bow22WithoutPin,
});
