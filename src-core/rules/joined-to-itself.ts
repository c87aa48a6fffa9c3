import { defineTextRule } from './rule.ts';

export const joinedToItself = defineTextRule({
  name: 'joined-to-itself',
  severity: 'error',
  summary: 'A piece is joined to itself.',
  why: 'an end-to-end splice joins two pieces; one piece joined to itself is a sling, which is no winch line',
  source: 'the pieces as they are named',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-14  join  main to main bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-14  cut   at 18 m from inboard  keep tail
  2026-06-14  join  main to tail bury 72 d taper 24 d stitched
}
`,
});
