import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const strayBrace = defineTextRule({
  name: 'stray-brace',
  severity: 'error',
  summary: 'A closing brace stands where no block is open.',
  why: 'a brace too many often means that a block was closed earlier than intended',
  source: 'the grammar of the language',
  bad: `${bow22WithoutPin}}
`,
  good: bow22WithoutPin,
});
