import { didYouMean } from '../base/did-you-mean.ts';
import type { Draft } from '../assess/finding.ts';
import type { Place } from '../base/span.ts';
import { wordOf } from '../model/bound.ts';
import { definedRules, defineRule } from './rule.ts';

/** What is said of a rule name that no rule has, in a practice block or behind `# allow`. */
export function unknownRuleDraft(name: string, place: Place): Draft {
  const near = didYouMean(name, definedRules.keys());
  return {
    place,
    message: `no rule is named \`${name}\``,
    help: near === undefined ? 'copy the name from the finding it is meant for' : `did you mean \`${near}\`?`,
    fixes: near === undefined ? [] : [{ title: `Write \`${near}\``, edits: [{ place, text: near }], mechanical: true }],
  };
}

export const unknownRule = defineRule({
  name: 'unknown-rule',
  on: 'block',
  heads: ['practice'],
  severity: 'warning',
  summary: 'A severity or an allowance names a rule that does not exist.',
  why: 'it has no effect on anything',
  source: 'our own careful choice, because a setting that does nothing is taken for one that works',
  bad: `practice "Tarn Hut supply crew" {
  severity  rope-on-ropes error
}
`,
  good: `practice "Tarn Hut supply crew" {
  severity  rope-on-rope error
}
`,
  check(block, judge) {
    for (const statement of block.statements) {
      const value = statement.values.get('rule');
      const name = wordOf(statement.values, 'rule');
      if (value === undefined || name === undefined) continue;
      judge.holds(definedRules.has(name), () => unknownRuleDraft(name, value.place));
    }
  },
});
