import { defineTextRule } from './rule.ts';

export const useLoop = defineTextRule({
  name: 'use-loop',
  severity: 'error',
  summary: 'A file takes itself in, directly or through others.',
  why: 'which statement comes last, and so counts, cannot be told',
  source: 'the grammar of the language',
  bad: `use "example.rig"

shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
  good: `use "practice.rig"

shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`,
  files: {
    'practice.rig': `practice "Tarn Hut supply crew" {
  line-factor  2 "crew rule 4"
}
`,
  },
});
