import { limitSetAside, unusedAllowance } from './allowance-rules.ts';
import { buryTooShort } from './bury-too-short.ts';
import { missingFact } from './missing-fact-rule.ts';
import type { Rule } from './rule.ts';

/** Every rule, by name. */
export const rules: readonly Rule[] = [
  buryTooShort,
  missingFact,
  unusedAllowance,
  limitSetAside,
];

const byName = new Map(rules.map((r) => [r.name, r]));
export const ruleNamed = (name: string): Rule | undefined => byName.get(name);
