import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const missingBlock = defineTextRule({
  name: 'missing-block',
  severity: 'error',
  summary: 'A block is named and has no body.',
  why: 'without its statements nothing is known about it',
  source: 'the grammar of the language',
  bad: `shackle bow-22
`,
  good: bow22WithoutPin,
});
