import { defineTextRule } from './rule.ts';

export const entryAfterRetired = defineTextRule({
  name: 'entry-after-retired',
  severity: 'error',
  summary: 'Something is written down for a line after it was retired.',
  why: 'a retired line is out of use for good; either it was not retired, or the entry belongs to another line',
  source: 'common practice',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  retired  "melted at the fairlead"
  2026-06-21  pulled   20 kN
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  pulled   20 kN
  2026-06-21  retired  "melted at the fairlead"
}
`,
});
