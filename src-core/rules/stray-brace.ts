import { defineTextRule } from './rule.ts';

export const strayBrace = defineTextRule({
  name: 'stray-brace',
  severity: 'error',
  summary: 'A closing brace stands where no block is open.',
  why: 'a brace too many often means that a block was closed earlier than intended',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
}
`,
  good: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
});
