import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const unclosedBrace = defineTextRule({
  name: 'unclosed-brace',
  severity: 'error',
  summary: 'A block is opened and never closed.',
  why: 'where the block ends cannot be told, so its last statements may be meant for another one',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t

anchor larch {
  kind  tree
}
`,
  good: `${bow22WithoutPin}
anchor larch {
  kind  tree
}
`,
});
