import { pullExample, pullWith } from './example-pull.ts';
import { isJudgedElsewhere, judgeLoads, overLimit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const anchorOverloaded = defineRule({
  name: 'anchor-overloaded',
  on: 'pull',
  severity: 'error',
  summary: 'A pull loads an anchor above what it holds.',
  why: 'an anchor that comes out comes towards the winch',
  source: 'the holding power that the file gives, or the published table behind it',
  citesRating: true,
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }), anchor: `anchor larch {
  kind     tree
  holding  20 kN "tested 2026-05-02"
}
` }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  check(pull, judge) {
    // A braked vehicle and a buried log have rules of their own, which say how much more is needed.
    judgeLoads(pull, judge, (loaded) => loaded.sort === 'anchor' && !isJudgedElsewhere(loaded), (loaded, load, limit) => overLimit(pull, loaded, load, limit, 'load', 'holding power', 'use another anchor, or two with a bridle'));
  },
});
