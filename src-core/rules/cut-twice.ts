import { defineTextRule } from './rule.ts';

export const cutTwice = defineTextRule({
  name: 'cut-twice',
  severity: 'error',
  summary: 'Two cuts of a repair are at the same place, or one lies in line that the other drops.',
  why: 'every position of a repair is measured on the line as it lies before, so one of the two is a slip',
  source: 'the positions as they are written',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}

repair split on main {
  cut     at 18 m from inboard
  cut     at 18 m from inboard  keep tail
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}

repair split on main {
  cut     at 18 m from inboard  keep tail
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
  splice  tail inboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
});
