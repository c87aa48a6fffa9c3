import { defineTextRule } from './rule.ts';

export const unclosedQuote = defineTextRule({
  name: 'unclosed-quote',
  severity: 'error',
  summary: 'Text in quotes is not closed on its line.',
  why: 'everything up to the end of the line is taken for text, and a value behind it would be lost',
  source: 'the grammar of the language',
  bad: `vehicle plover "flatbed, loaded {
  mass  2,650 kg
}
`,
  good: `vehicle plover "flatbed, loaded" {
  mass  2,650 kg
}
`,
});
