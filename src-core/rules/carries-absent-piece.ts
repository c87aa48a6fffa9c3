import { nameOf } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

export const carriesAbsentPiece = defineRule({
  name: 'carries-absent-piece',
  on: 'winch',
  severity: 'error',
  summary: 'A winch carries a piece of line that is not there on the day that is judged.',
  why: 'a piece exists from the cut that makes it until it is joined to another; a planned cut has made nothing yet',
  source: 'our own careful choice, because a plan is not a fact',
  bad: `winch bow-winch {
  carries  tail
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}

repair split on main {
  cut     at 12 m from inboard  keep tail
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
  splice  tail inboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `winch bow-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(winch, judge, assessing) {
    const named = winch.carries === undefined ? undefined : nameOf(winch.carries.values, 'line');
    const declared = named === undefined ? undefined : assessing.reader.find(named.name, ['line', 'piece']);
    if (named === undefined || declared === undefined) return;
    const planned = declared.block.definition.head === 'repair';
    judge.holds(winch.piece !== undefined, () => ({
      place: named.place,
      message: planned ? `\`${named.name}\` exists only after \`${declared.block.name ?? 'the repair'}\`, which is a plan` : `\`${named.name}\` is not a piece of \`${declared.block.name ?? 'the line'}\` on ${printDay(assessing.day)}`,
      help: planned ? 'carry the line as it is now; once the repair is done, write it into the logbook' : 'name a piece that is there, or correct the dates of the logbook',
      related: [{ place: declared.place, message: planned ? 'planned here' : 'cut here' }],
    }));
  },
});
