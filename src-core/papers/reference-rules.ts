import { rules } from '../rules/all.ts';
import type { Rule } from '../rules/rule.ts';
import { whyItStays } from '../rules/why-it-stays.ts';
import { headingLink, page } from './reference-text.ts';
import { rulePage } from './rule-page.ts';

const byName = (a: Rule, b: Rule): number => (a.name < b.name ? -1 : 1);

/** Every rule with its reason, its source and its examples. */
export function rulesReference(): string {
  const sorted = [...rules].sort(byName);
  const rated = sorted.filter((r) => r.citesRating === true).length;
  const open = sorted.filter((r) => whyItStays(r) === undefined).length;
  return page([
    '# Rules',
    `${sorted.length} rules. Each says one thing that is looked for, why, and on whose word; ${rated} compare with a rating. An error and a finding that compares with a rating stay: no comment sets them aside and no \`practice\` block lowers them. The other ${open} can be set aside at their place with a written reason, and all but \`missing-fact\` lowered by \`severity\` in a \`practice\` block. Any can be raised.`,
    sorted.map((r) => `- [${r.name}](${headingLink(r.name)}) (${r.severity}): ${r.summary}`).join('\n'),
    ...sorted.map((r) => rulePage(r, 2).trimEnd()),
  ]);
}
