import { severities, type Severity } from '../assess/finding.ts';
import { wordOf } from '../model/bound.ts';
import { wholeLine } from './fix-text.ts';
import { definedRules, defineRule } from './rule.ts';

export const severityCannotBeLowered = defineRule({
  name: 'severity-cannot-be-lowered',
  on: 'block',
  heads: ['practice'],
  severity: 'error',
  summary: 'A practice block lowers a finding that compares with a rating.',
  why: 'a rating is not a matter of opinion; the finding is shown as before',
  source: 'our own careful choice, because nobody on the spot can raise a maker\'s limit',
  bad: `practice "Tarn Hut supply crew" {
  severity  link-above-limit hint
}
`,
  good: `practice "Tarn Hut supply crew" {
  severity  limit-from-table warning
}
`,
  check(block, judge) {
    for (const statement of block.statements) {
      if (statement.definition.head !== 'severity') continue;
      const name = wordOf(statement.values, 'rule');
      const level = wordOf(statement.values, 'level');
      const rule = name === undefined ? undefined : definedRules.get(name);
      if (rule === undefined || level === undefined) continue;
      const lowered = level === 'off' || severities.indexOf(level as Severity) > severities.indexOf(rule.severity);
      judge.holds(!(lowered && rule.citesRating === true), () => ({
        place: statement.place,
        message: `\`${name!}\` compares with a rating and stays ${rule.severity === 'error' ? 'an error' : `a ${rule.severity}`}`,
        help: 'remove the line, and change what the finding speaks of',
        fixes: [{ title: 'Remove the line', edits: [{ place: wholeLine(statement.place), text: '' }] }],
      }));
    }
  },
});
