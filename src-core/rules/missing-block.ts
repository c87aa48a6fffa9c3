import { defineTextRule } from './rule.ts';

export const missingBlock = defineTextRule({
  name: 'missing-block',
  severity: 'error',
  summary: 'A block is named and has no body.',
  why: 'without its statements nothing is known about it',
  source: 'the grammar of the language',
  bad: `shackle bow-22
`,
  good: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
});
