import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

export const carriesRetiredLine = defineRule({
  name: 'carries-retired-line',
  on: 'winch',
  severity: 'error',
  summary: 'A winch carries a line that is retired.',
  why: 'a line is retired because somebody found that it does not hold any more',
  source: 'common practice',
  bad: `winch bow-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2025-04-02  fitted
  2026-06-21  retired  "melted at the fairlead"
}
`,
  good: `winch bow-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  2026-06-21  fitted
}
`,
  check(winch, judge) {
    const { piece, carries } = winch;
    if (piece === undefined || carries === undefined) return;
    const { retired } = piece;
    judge.holds(retired === undefined, () => ({
      place: carries.place,
      message: `\`${winch.name}\` carries \`${piece.name}\`, which was retired on ${printDay(retired!.day)}`,
      help: 'fit another line, and write it as a block of its own',
      related: [{ place: retired!.statement.place, message: 'retired here' }],
    }));
  },
});
