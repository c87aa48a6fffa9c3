import { defineTextRule } from './rule.ts';

export const unknownPiece = defineTextRule({
  name: 'unknown-piece',
  severity: 'error',
  summary: 'A piece of line is named that is not there at that point.',
  why: 'a piece exists from the cut that keeps it until it is joined on; an entry on any other is an entry on nothing',
  source: 'the logbook replayed in the order of its dates',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  inspected  tail
}

line tail {
  material  HMPE
  diameter  10 mm
  length    12 m
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-14  cut        at 18 m from inboard  keep tail
  2026-06-14  splice     outboard eye thimble tube bury 72 d taper 24 d stitched
  2026-06-14  splice     tail inboard eye thimble tube bury 72 d taper 24 d stitched
  2026-06-21  inspected  tail
}
`,
});
