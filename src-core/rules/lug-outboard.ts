import { inService } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

export const lugOutboard = defineRule({
  name: 'lug-outboard',
  on: 'line',
  severity: 'warning',
  summary: 'The end that takes the load is a lug made to fasten the line to the drum.',
  why: 'a drum lug only holds the end still while the kept wraps carry the pull; what it holds by itself is not given',
  source: 'Alberta OHS Code 2009, s. 299(2): the wraps take the force off the fastening',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  lug
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      if (piece.outboard.facts.form === 'unstated') continue;
      judge.holds(piece.outboard.facts.form !== 'lug', () => ({
        place: piece.outboard.facts.place,
        message: `outboard end of \`${piece.name}\` is a drum lug, and what it holds is not given`,
        help: piece.outboard.facts.place.chunk === line.block.chunk ? 'cut the lug off and splice an eye, or turn the line end for end and write `reversed`' : 'remove `reversed` from the repair, or cut the lug off and splice an eye',
      }));
    }
  },
});
