import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const braceBelowHead = defineTextRule({
  name: 'brace-below-head',
  severity: 'error',
  summary: 'The brace that opens a block stands on a line below its head.',
  why: 'a line ends what it says, and a brace on a line of its own may belong to something that was lost',
  source: 'the grammar of the language',
  bad: `shackle bow-22
{
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
  good: bow22WithoutPin,
});
