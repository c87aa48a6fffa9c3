import { severities, type Severity } from '../assess/finding.ts';
import { wordOf } from '../model/bound.ts';
import { wholeLine } from './fix-text.ts';
import { definedRules, defineRule } from './rule.ts';
import { whyNotLowered } from './why-it-stays.ts';

const shownAsText: Readonly<Record<Severity, string>> = { error: 'an error', warning: 'a warning', information: 'information', hint: 'a hint' };

export const severityCannotBeLowered = defineRule({
  name: 'severity-cannot-be-lowered',
  on: 'block',
  heads: ['practice'],
  severity: 'error',
  summary: 'A practice block lowers an error, a finding that compares with a rating, or a fact that is not given.',
  why: 'what is wrong or not known stays so; the finding is shown as before',
  source: 'our own careful choice, because nobody on the spot can raise a limit by a setting',
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
      const stays = whyNotLowered(rule);
      judge.holds(!(lowered && stays !== undefined), () => ({
        place: statement.place,
        message: `\`${name!}\` ${stays!} and ${stays === 'is an error' ? 'stays one' : `stays ${shownAsText[rule.severity]}`}`,
        help: 'remove the line, and change what the finding speaks of',
        fixes: [{ title: 'Remove the line', edits: [{ place: wholeLine(statement.place), text: '' }] }],
      }));
    }
  },
});
