import { defineTextRule } from './rule.ts';

export const missingFact = defineTextRule({
  name: 'missing-fact',
  severity: 'information',
  saysUnknown: true,
  summary: 'A fact is not written, and checks that need it are not judged.',
  why: 'what is not known is not judged, and never taken for fine',
  source: 'our own careful choice, because people stand near loaded lines',
  bad: `line main {
  material  HMPE
  strands   12
  length    30 m
  outboard  eye thimble tube bury 720 mm taper 240 mm
  stored    covered
  2026-06-21  fitted
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
  stored    covered
  2026-06-21  fitted
}
`,
});
