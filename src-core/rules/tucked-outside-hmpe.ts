import { workedEnds, endName } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

export const tuckedOutsideHmpe = defineRule({
  name: 'tucked-outside-hmpe',
  on: 'line',
  severity: 'warning',
  summary: 'A short tucked splice is used in a material for which its short tail is not published.',
  why: 'the short tail of a tucked splice is published for HMPE; in another fibre the tucks are not counted and the full bury is asked',
  source: 'maker\'s published instruction, tuck-bury eye for HMPE',
  bad: `line main {
  material  polyester
  diameter  12 mm
  length    30 m
  outboard  eye thimble tube bury 31.5 d taper 8 d tucked
}
`,
  good: `line main {
  material  HMPE
  diameter  12 mm
  length    30 m
  outboard  eye thimble tube bury 31.5 d taper 8 d tucked
}
`,
  check(line, judge) {
    const { material, materialCause } = line.facts;
    for (const { piece, end } of workedEnds(line)) {
      if (!end.facts.tucked) continue;
      if (materialCause !== undefined) {
        judge.cannot(materialCause, end.facts.place);
        continue;
      }
      judge.holds(material === 'HMPE', () => ({
        place: end.facts.place,
        message: `${endName(piece, end)} is a short tucked splice in ${material}; its tail is published for HMPE only`,
        help: `bury the full length for ${material} and remove \`tucked\`, or ask the maker`,
      }));
    }
  },
});
