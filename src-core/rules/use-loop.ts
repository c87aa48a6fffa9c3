import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const useLoop = defineTextRule({
  name: 'use-loop',
  severity: 'error',
  summary: 'A file takes itself in, directly or through others.',
  why: 'which statement comes last, and so counts, cannot be told',
  source: 'the grammar of the language',
  bad: `use "example.rig"

${bow22WithoutPin}`,
  good: `use "practice.rig"

${bow22WithoutPin}`,
  files: {
    'practice.rig': `practice "Tarn Hut supply crew" {
  line-factor  2 "crew rule 4"
}
`,
  },
});
