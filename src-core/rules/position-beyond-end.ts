import { defineTextRule } from './rule.ts';

export const positionBeyondEnd = defineTextRule({
  name: 'position-beyond-end',
  severity: 'error',
  summary: 'A position on a line lies beyond its end.',
  why: 'a position is measured on the line as it was on that day, after every cut before it',
  source: 'the logbook replayed in the order of its dates',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion light at 32 m from inboard
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion light at 12 m from inboard
}
`,
});
