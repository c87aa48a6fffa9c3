import { defineTextRule } from './rule.ts';

export const endNotCut = defineTextRule({
  name: 'end-not-cut',
  severity: 'error',
  summary: 'An eye is spliced on an end that still has one.',
  why: 'the old eye is cut off first, and without that cut the line is counted longer than it is',
  source: 'the logbook replayed in the order of its dates',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  cut     at 25 m from inboard
  2026-05-02  splice  outboard eye thimble tube bury 46 d taper 24 d temporary
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  cut     at 25 m from inboard
  2026-05-02  splice  outboard eye thimble tube bury 46 d taper 24 d temporary
  2026-06-21  cut     at 22 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
});
