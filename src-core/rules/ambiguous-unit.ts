import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const ambiguousUnit = defineTextRule({
  name: 'ambiguous-unit',
  severity: 'error',
  summary: 'A unit can mean several things.',
  why: 'a ton is 907, 1,000 or 1,016 kg, which is a difference of a tenth of the load',
  source: 'NIST SP 811 (2008), app. B: short ton, long ton and tonne',
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 ton
}
`,
  good: bow22WithoutPin,
});
