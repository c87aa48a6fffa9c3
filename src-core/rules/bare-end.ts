import type { AssessedEnd } from '../assess/splice-end.ts';
import { inService } from '../assess/ends.ts';
import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

/** Forms of an end by which a drum holds it. */
const madeForDrum: ReadonlySet<string> = new Set(['lug', 'eye', 'hook']);

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
    const made = statementOf(line.block, 'inboard');
    const drumForm = made === undefined ? undefined : wordOf(made.values, 'form');
    for (const piece of inService(line)) {
      // On a drum a bare end is held by its clamp and the kept wraps.
      const onDrum = piece.inboard.facts.supplied || piece.name === line.facts.name || assessing.reader.winchesCarrying(piece.name).length > 0;
      const loaded: AssessedEnd[] = onDrum ? [piece.outboard] : [piece.inboard, piece.outboard];
      // A line that is turned after a cut brings the cut end to the drum, which held the other one by what was made there.
      if (onDrum && piece.inboard.facts.form === 'bare' && !piece.inboard.facts.supplied && piece.inboard.facts.statement === undefined && madeForDrum.has(drumForm ?? '')) {
        judge.holds(false, () => ({
          place: piece.inboard.facts.place,
          related: [{ place: made!.place, message: 'what was made for the drum' }],
          message: `the end of \`${piece.name}\` that goes onto the drum is as the cut left it`,
          why: 'the drum holds a line by the end that was made for it',
          help: 'make the end that the drum holds, and write it: `splice inboard lug`; `splice inboard bare` where the drum clamps a cut end',
        }));
      }
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
