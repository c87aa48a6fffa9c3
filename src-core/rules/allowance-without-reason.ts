import { defineTextRule } from './rule.ts';

export const allowanceWithoutReason = defineTextRule({
  name: 'allowance-without-reason',
  severity: 'error',
  summary: 'A comment sets a finding aside and does not say why.',
  why: 'whoever reads the file next needs the reason to judge whether it still holds',
  source: 'our own careful choice, because an exception without a reason cannot be reviewed',
  bad: `strap trunk {
  length    3 m
  wll       4 t  # allow design-factor-low
  breaking  12 t
}
`,
  good: `strap trunk {
  length    3 m
  wll       4 t  # allow design-factor-low: the maker rates it at 3 to 1 on its label
  breaking  12 t
}
`,
});
