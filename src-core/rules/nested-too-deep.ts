import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const nestedTooDeep = defineTextRule({
  name: 'nested-too-deep',
  severity: 'error',
  summary: 'Blocks stand in blocks far deeper than the language knows.',
  why: 'what stands inside is not read',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
${'  ring {\n'.repeat(16)}${'  }\n'.repeat(16)}}
`,
  good: bow22WithoutPin,
});
