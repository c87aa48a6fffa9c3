import { inService } from '../assess/ends.ts';
import { writtenValue } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { overloadLimit } from '../mechanics/overload-limit.ts';
import { quantityOf } from '../model/bound.ts';
import { sincePassed } from '../model/line-state.ts';
import { strengthKnown } from './weakest-place.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const lineOverloaded = defineRule({
  name: 'line-overloaded',
  on: 'line',
  severity: 'error',
  summary: 'A pull in the logbook was so high that it damaged the line for good.',
  why: 'a line loaded over about three quarters of its strength is permanently damaged, and nothing shows it from outside',
  source: 'NAVEDTRA 14160 (after NSTM ch. 613)',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-02  fitted
  2026-06-14  pulled  71 kN
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-04-02  fitted
  2026-06-14  pulled  31 kN
}
`,
  check(line, judge, assessing) {
    const logged = new Set(inService(line).flatMap((piece) => sincePassed(piece.long.log).map((entry) => entry.statement)));
    const o = assessing.practice.value('overload-share');
    for (const entry of logged) {
      const load = entry.definition.head === 'pulled' ? quantityOf(entry.values, 'load') : undefined;
      if (load === undefined) continue;
      const piece = line.pulled.get(entry);
      if (piece === undefined) continue;
      const { strength, unless } = strengthKnown(piece);
      judge.atMost(writtenValue(load), asGiven(overloadLimit({ F_b: strength, o })), load.place, (pulled, limit) => {
        const broken = !isUnknown(strength) && isAbove(pulled.amount.high, strength.amount.low);
        return {
          place: load.place,
          message: broken && !isUnknown(strength) ? `pull of ${show(pulled)} is above the ${show(strength, { unit: load.unit })} at which \`${piece.name}\` may have broken then` : `pull of ${show(pulled)} is above ${show(limit, { unit: load.unit })}, ${isUnknown(o) ? 'a share' : show(o)} of what \`${piece.name}\` held then`,
          help: 'inspect the whole line and its splices, and retire it; where its maker passes it, write `inspected passed` with who and when in quotes',
          source: sourceOfLimit(o),
        };
      }, unless);
    }
  },
});
