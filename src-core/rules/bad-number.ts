import { defineTextRule } from './rule.ts';

export const badNumber = defineTextRule({
  name: 'bad-number',
  severity: 'error',
  summary: 'A number cannot be read, or is far too large to be meant.',
  why: 'a value that cannot be read is not known',
  source: 'the grammar of the language',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    3/0 m
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    98 1/2 ft
}
`,
});
