import { defineTextRule } from './rule.ts';

export const spliceLongerThanPiece = defineTextRule({
  name: 'splice-longer-than-piece',
  severity: 'error',
  summary: 'A splice needs more line than the piece has.',
  why: 'the tail has to lie inside the same piece that it is taken from, so a splice needs more than twice its bury',
  source: 'geometry: eye, tail and the line around the tail come out of one length',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 1.2 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 12 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
});
