import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const useMissing = defineTextRule({
  name: 'use-missing',
  severity: 'error',
  summary: 'A used file is not there, or cannot be read.',
  why: 'its names and its practice are missing from everything that is judged here',
  source: 'our own careful choice, because a limit that was not found must not be taken for one that was never set',
  bad: `use "practise.rig"

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
