import { defineTextRule } from './rule.ts';

const line = (comment: string, bury: string): string => `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury ${bury} taper 24 d${comment}
}
`;

export const unusedAllowance = defineTextRule({
  name: 'unused-allowance',
  severity: 'warning',
  summary: 'A comment sets a finding aside that is not there.',
  why: 'a reason that outlives its finding hides the next one',
  source: 'our own careful choice, because a stale exception is worse than none',
  bad: line('  # allow taper-too-short: maker\'s own splice', '72 d'),
  good: line('', '72 d'),
});

export const cannotBeSetAside = defineTextRule({
  name: 'cannot-be-set-aside',
  severity: 'error',
  summary: 'A comment tries to set aside an error, or a finding that compares with a rating.',
  why: 'what is wrong stays wrong whatever the reason, and people stand near the line',
  source: 'our own careful choice, because nobody on the spot can raise a limit by a comment',
  bad: `winch bow-winch {
  rated    42 kN
  barrel   64 mm
  width    230 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  # allow line-weaker-than-winch: it has always held
  breaking  40 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: line('', '72 d'),
});
