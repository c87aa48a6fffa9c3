import type { Severity } from '../assess/finding.ts';
import type { RuleText } from './rule.ts';

/** Why nobody may set a rule's finding aside; undefined when a written reason may. `severity` is that of one finding. */
export function whyItStays(rule: Pick<RuleText, 'citesRating' | 'severity'>, severity: Severity = rule.severity): string | undefined {
  if (rule.citesRating === true) return 'compares with a rating';
  return severity === 'error' ? 'is an error' : undefined;
}

/** Why no practice shows a rule's findings as less. What is not known may be set aside at its place, with a reason; not everywhere at once. */
export const whyNotLowered = (rule: Pick<RuleText, 'citesRating' | 'saysUnknown' | 'severity'>, severity: Severity = rule.severity): string | undefined =>
  whyItStays(rule, severity) ?? (rule.saysUnknown === true ? 'says what is not known' : undefined);
