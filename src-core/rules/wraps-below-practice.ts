import { statementOf } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

export const wrapsBelowPractice = defineRule({
  name: 'wraps-below-practice',
  on: 'winch',
  severity: 'warning',
  summary: 'Fewer wraps are kept on the drum than practice asks for.',
  why: 'the kept wraps hold the line on the barrel by friction, and slippery fibre needs more of them than wire; the fastening alone does not hold a pull',
  source: 'common practice for HMPE; Alberta OHS Code 2009, s. 299(2), for other lines; a maker\'s figure goes before both',
  bad: `winch bow-winch {
  keep     5 wraps
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  good: `winch bow-winch {
  keep     10 wraps
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  check(winch, judge) {
    if (!winch.keepWritten) return;
    const wraps = statementOf(winch.block, 'keep')?.values.get('wraps');
    const place = wraps?.place ?? winch.block.namePlace;
    judge.atLeast(winch.keep, winch.keepNeeded, place, (kept, needed) => ({
      place,
      message: `\`${winch.name}\` keeps ${show(kept)} wraps, below the ${show(needed)} for ${winch.piece?.line.material ?? 'its'} line`,
      help: `keep ${show(needed)} wraps, or write its maker's figure as \`keep-wraps ${winch.piece?.line.material ?? ''} ${show(kept)} wraps "maker's handbook"\` in a \`practice\` block`,
      source: sourceOfLimit(needed),
      fixes: wraps === undefined ? [] : [{ title: `Keep ${show(needed)} wraps`, edits: [{ place, text: show(needed) }] }],
    }));
  },
});
