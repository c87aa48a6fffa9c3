import { bow22WithoutPin } from './example-blocks.ts';
import { defineTextRule } from './rule.ts';

export const conflictMarker = defineTextRule({
  name: 'conflict-marker',
  severity: 'error',
  summary: 'The file holds an unfinished merge.',
  why: 'both sides of the merge are read, and one of them is not meant',
  source: 'the conflict marks of version control',
  bad: `shackle bow-22 {
  form  bow
<<<<<<< ours
  wll   6.5 t
=======
  wll   4.7 t
>>>>>>> theirs
}
`,
  good: bow22WithoutPin,
});
