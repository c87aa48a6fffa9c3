import { nameOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

export const lineOnTwoDrums = defineRule({
  name: 'line-on-two-drums',
  on: 'winch',
  severity: 'error',
  summary: 'Two winches carry the same line.',
  why: 'a line is on one drum; the other winch is judged with a line that it does not have',
  source: 'our own careful choice, because one of the two statements is wrong',
  bad: `winch bow-winch {
  carries  main
}

winch stern-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  good: `winch bow-winch {
  carries  main
}

winch stern-winch {
  carries  short
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}

line short {
  material  HMPE
  diameter  10 mm
  length    20 m
}
`,
  check(winch, judge, assessing) {
    const named = winch.carries === undefined ? undefined : nameOf(winch.carries.values, 'line');
    if (named === undefined) return;
    const first = assessing.reader.winchesCarrying(named.name)[0];
    judge.holds(first === undefined || first === winch.block, () => ({
      place: named.place,
      message: `\`${named.name}\` is on \`${winch.name}\` and on \`${first?.name ?? 'another winch'}\``,
      help: 'name the line that is really on this drum',
      related: first === undefined ? [] : [{ place: first.namePlace, message: 'the other winch' }],
    }));
  },
});
