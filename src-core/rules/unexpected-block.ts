import { defineTextRule } from './rule.ts';

export const unexpectedBlock = defineTextRule({
  name: 'unexpected-block',
  severity: 'error',
  summary: 'A block stands where a statement is meant.',
  why: 'what stands inside is not read',
  source: 'the grammar of the language',
  bad: `vehicle plover {
  mass  2,650 kg
  point bow {
  }
}
`,
  good: `vehicle plover {
  mass   2,650 kg
  point  bow rated 4.7 t
}
`,
});
