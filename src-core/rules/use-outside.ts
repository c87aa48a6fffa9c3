import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const useOutside = defineTextRule({
  name: 'use-outside',
  severity: 'error',
  summary: 'A used file lies outside the workspace folder, or its path does not start at this file\'s folder.',
  why: 'a file that is not shared with the folder is not there for the next reader',
  source: 'our own careful choice, because a rig file of a stranger must not reach into the rest of the disk',
  bad: `use "../../elsewhere/practice.rig"

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
