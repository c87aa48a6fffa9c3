import type { AssessedEnd } from '../assess/splice-end.ts';
import { inService } from '../assess/ends.ts';
import { defineRule } from './rule.ts';

export const bareEnd = defineRule({
  name: 'bare-end',
  on: 'line',
  severity: 'warning',
  summary: 'A piece that stays in use has a bare end where it is to be loaded.',
  why: 'nothing can be joined to a bare end',
  source: 'common practice',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut  at 20 m from inboard
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  check(line, judge, assessing) {
    for (const piece of inService(line)) {
      // On a drum a bare end is held by its clamp and the kept wraps.
      const onDrum = piece.inboard.facts.supplied || piece.name === line.facts.name || assessing.reader.winchesCarrying(piece.name).length > 0;
      const loaded: AssessedEnd[] = onDrum ? [piece.outboard] : [piece.inboard, piece.outboard];
      for (const end of loaded) {
        if (end.facts.form === 'unstated') continue;
        judge.holds(end.facts.form !== 'bare', () => ({
          place: end.facts.place,
          message: `\`${piece.name}\` is left with a bare ${end.which} end`,
          help: end.facts.day === undefined && !end.facts.supplied ? `add \`splice ${piece.name === line.facts.name ? '' : piece.name + ' '}${end.which} eye ...\` to the repair, or keep no piece` : `splice an eye and write it down, or write \`retired\` for the piece`,
        }));
      }
    }
  },
});
