import { damagePlace } from '../assess/damage-place.ts';
import { inService } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

const helps: Readonly<Record<string, string>> = {
  cut: 'count them and write it like `damage cut 1 strand at ...`, or cut the place out',
  pulled: 'count them and write it like `damage pulled 1 strand at ...`',
  abrasion: 'write `light`, `moderate` or `heavy`, or the share of strand volume that is gone',
  glaze: 'flex the place a few times and write `soft` or `hard`',
};

export const damageNotMeasured = defineRule({
  name: 'damage-not-measured',
  on: 'line',
  severity: 'warning',
  summary: 'A damage is written down without how bad it is.',
  why: 'what was not looked at closely may be the weakest place, so the line cannot be judged beyond it',
  source: 'our own careful choice, because a damage of unknown size is not taken for a small one',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion at 8.4 m from inboard
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion light at 8.4 m from inboard
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      for (const damage of piece.damages) {
        if (damage.fact.statement.broken.size > 0) continue;
        judge.holds(damage.notMeasured === undefined, () => ({
          place: damage.fact.place,
          message: `${damage.notMeasured} at ${damagePlace(damage)} on \`${piece.name}\` is not written, so ${damage.remedy === 'cut-out' ? 'it counts as damage to cut out' : 'no strength is judged there'}`,
          help: helps[damage.fact.kind] ?? 'look at the place again and write what is there',
        }));
      }
    }
  },
});
