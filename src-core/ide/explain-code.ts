import { didYouMean } from '../base/did-you-mean.ts';
import { rulePage } from '../papers/rule-page.ts';
import { ruleNamed, rules } from '../rules/all.ts';

/** The page of a rule: what it finds, why that matters, on whose word, and an example of each kind. */
export function explainCode(code: string): string {
  const rule = ruleNamed(code);
  if (rule === undefined) {
    const near = didYouMean(code, rules.map((r) => r.name));
    return `# ${code.slice(0, 80)}\n\nThis version has no page for that code.${near === undefined ? '' : ` Did you mean \`${near}\`?`}\n`;
  }
  return rulePage(rule);
}

/** Every rule with its summary, by name. */
export const ruleList = (): { readonly code: string; readonly summary: string }[] =>
  rules.map((rule) => ({ code: rule.name, summary: rule.summary })).sort((a, b) => (a.code < b.code ? -1 : 1));
