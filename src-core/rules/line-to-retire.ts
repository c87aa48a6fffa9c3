import { damageWords } from '../assess/damage-words.ts';
import { damagePlace } from '../assess/damage-place.ts';
import { inService } from '../assess/ends.ts';
import type { DamageFact } from '../model/line-state.ts';
import { defineRule } from './rule.ts';

const what = (fact: DamageFact): string => (fact.kind === 'stain' ? 'a stain' : damageWords(fact));

export const lineToRetire = defineRule({
  name: 'line-to-retire',
  on: 'line',
  severity: 'error',
  summary: 'Damage that no cut takes out is still in service.',
  why: 'brittle or stained fibre has changed where nobody can see how far, so no place of the line can be counted on',
  source: 'inspection guides citing CI 2001-04: discoloured and brittle, retire (read in a document that quotes it); for stains our own careful choice',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  brittle at 8.4 m from inboard
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage   brittle at 8.4 m from inboard
  2026-06-21  retired  "brittle after a winter beside the battery"
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      for (const damage of piece.damages) {
        judge.holds(damage.remedy !== 'retire', () => ({
          place: damage.fact.place,
          message: damage.from === undefined && damage.fact.statement.values.has('station')
            ? `\`${piece.name}\` is of a line that had ${what(damage.fact)}, and is not retired: no cut takes that out`
            : `\`${piece.name}\` has ${what(damage.fact)} at ${damagePlace(damage)} and is not retired`,
          why: damage.because,
          help: 'take it out of use and write `retired` with the date',
        }));
      }
    }
  },
});
