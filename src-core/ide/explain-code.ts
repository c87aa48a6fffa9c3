import { didYouMean } from '../base/did-you-mean.ts';
import { ruleNamed, rules } from '../rules/all.ts';

/** The page of a rule: what it finds, why that matters, on whose word, and an example of each kind. */
export function explainCode(code: string): string {
  const rule = ruleNamed(code);
  if (rule === undefined) {
    const near = didYouMean(code, rules.map((r) => r.name));
    return `# ${code.slice(0, 80)}\n\nThis version has no page for that code.${near === undefined ? '' : ` Did you mean \`${near}\`?`}\n`;
  }
  const example = (text: string): string => `\`\`\`rig\n${text.trimEnd()}\n\`\`\``;
  const rating = rule.citesRating === true ? ['It compares with a rating that a maker or a standard gives, so nothing sets it aside.'] : [`A written reason sets it aside: \`# allow ${rule.name}: why it is right here\`, on the line or above it.`];
  return [`# ${rule.name}`, rule.summary, `Shown as ${rule.severity === 'information' ? 'information' : `${/^[aeiou]/.test(rule.severity) ? 'an' : 'a'} ${rule.severity}`}, because ${rule.why}.`, `Source: ${rule.source}`, ...rating, '## Found in', example(rule.bad), '## Not found in', example(rule.good)].join('\n\n') + '\n';
}

/** Every rule with its summary, by name. */
export const ruleList = (): { readonly code: string; readonly summary: string }[] =>
  rules.map((rule) => ({ code: rule.name, summary: rule.summary })).sort((a, b) => (a.code < b.code ? -1 : 1));
