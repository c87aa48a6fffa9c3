import { severities, type Finding, type Severity } from '../assess/finding.ts';
import type { Practice } from '../assess/practice.ts';
import { ruleNamed } from './all.ts';
import type { RuleText } from './rule.ts';
import { whyNotLowered } from './why-it-stays.ts';

/** A finding as the shop shows it; undefined when the shop does not. Nothing that stays is lowered. */
export function shownAs(finding: Finding, practice: Practice): Finding | undefined {
  const level = practice.severityOf(finding.code);
  if (level === undefined) return finding;
  const rule: RuleText | undefined = ruleNamed(finding.code);
  const lowered = level === 'off' || severities.indexOf(level as Severity) > severities.indexOf(finding.severity);
  if (lowered && rule !== undefined && whyNotLowered(rule, finding.severity) !== undefined) return finding;
  return level === 'off' ? undefined : { ...finding, severity: level as Severity };
}
