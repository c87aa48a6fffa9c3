import { allEnds, endName, workedEnds } from '../assess/ends.ts';
import { show, unitOf } from '../assess/show.ts';
import { isBelow } from '../base/compare.ts';
import type { Derived } from '../mechanics/derivation.ts';
import { lengthText } from './fix-text.ts';
import { defineRule } from './rule.ts';
import { sourceOfLimit } from './side-by-side.ts';

/** Three fids, which makers' published instructions give for HMPE: between them and the longer bury the maker of the line decides. */
const isOfSheets = (in_d: Derived): boolean => !('unknown' in in_d) && !isBelow(in_d.amount.low, 63);

export const buryTooShort = defineRule({
  name: 'bury-too-short',
  on: 'line',
  severity: 'error',
  summary: 'The tail of a splice is buried over a shorter length than the material needs.',
  why: 'a buried tail holds by the grip of the braid around it, and grip grows with buried length',
  source: 'Toss, The Complete Rigger\'s Apprentice, pp. 103-105, unless a practice block says otherwise',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 46 cm taper 24 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge) {
    const { constructionCause } = line.facts;
    if (constructionCause !== undefined) for (const { end } of allEnds(line)) judge.cannot(constructionCause, end.facts.place);
    for (const { piece, end, buried } of workedEnds(line)) {
      const written = end.facts.bury;
      const place = written?.place ?? end.facts.place;
      judge.atLeast(buried.bury, buried.needed, place, (bury, needed) => {
        const in_d = buried.buryIn_d;
        const share = buried.share;
        const unit = unitOf(bury);
        const counted = 'unknown' in share ? '' : `; it is counted at ${show({ amount: share.amount, kind: share.kind, origin: { from: 'derived', derivation: share } })} of a full splice`;
        return {
          place,
          severity: end.facts.temporary ? 'warning' : 'error',
          message: `bury of ${endName(piece, end)} is ${'unknown' in in_d ? show(bury) : show({ amount: in_d.amount, kind: in_d.kind, origin: { from: 'derived', derivation: in_d } })}, below the ${'unknown' in buried.needed_d ? '' : show(buried.needed_d, { careful: 'up' })} for ${line.facts.material} hollow braid`,
          why: `grip grows with buried length${counted}`,
          source: sourceOfLimit(buried.needed_d),
          help: `bury ${show(needed, { careful: 'up', unit })}, or cut the line again where more is left${isOfSheets(in_d) ? `; where the maker's own sheet gives less, write it in a \`practice\` block: \`bury ${line.facts.material} 63 d "maker's sheet"\`` : ''}`,
          // What was made is a fact; only a plan can be rewritten.
          fixes: written === undefined || end.facts.supplied || end.facts.day !== undefined ? [] : [{ title: `Write the full bury, ${lengthText(needed, written)}`, edits: [{ place: written.place, text: lengthText(needed, written) }] }],
        };
      });
    }
  },
});
