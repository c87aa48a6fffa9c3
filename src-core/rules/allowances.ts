import type { Finding } from '../assess/finding.ts';
import type { BoundChunk } from '../model/bound.ts';
import { ruleNamed } from './all.ts';
import { limitSetAside, unusedAllowance } from './allowance-rules.ts';
import type { TextRule } from './rule.ts';
import { unknownRule, unknownRuleDraft } from './unknown-rule.ts';

const say = (rule: TextRule, place: Finding['place'], message: string, help: string): Finding => ({ code: rule.name, severity: rule.severity, place, message, why: rule.why, help, source: rule.source, related: [], fixes: [] });

/**
 * Takes out findings that a written reason sets aside. A finding that cites a rating stays, and the attempt is said;
 * a reason that sets nothing aside is said too.
 */
export function applyAllowances(chunks: readonly BoundChunk[], findings: readonly Finding[]): Finding[] {
  let left = [...findings];
  for (const chunk of chunks) {
    for (const allowance of chunk.allowances) {
      const { text } = chunk.chunk;
      if (ruleNamed(allowance.code) === undefined) {
        const start = text.indexOf(allowance.code, allowance.place.start);
        const draft = unknownRuleDraft(allowance.code, { ...allowance.place, start, end: start + allowance.code.length });
        left.push({ code: unknownRule.name, severity: unknownRule.severity, why: unknownRule.why, source: unknownRule.source, related: [], ...draft, fixes: draft.fixes ?? [] } as Finding);
        continue;
      }
      const meant = left.filter((f) => f.code === allowance.code && f.place.chunk === chunk.chunk && f.place.start >= allowance.target && !/[\r\n]/.test(text.slice(allowance.target, f.place.start)));
      if (meant.length === 0) {
        left.push(say(unusedAllowance, allowance.place, `nothing is found here that \`${allowance.code}\` could set aside`, 'remove the comment'));
      } else if (ruleNamed(allowance.code)?.citesRating === true) {
        left.push(say(limitSetAside, allowance.place, `\`${allowance.code}\` compares with a rating and cannot be set aside`, 'remove the comment, and change what the finding speaks of'));
      } else left = left.filter((f) => !meant.includes(f));
    }
  }
  return left;
}
