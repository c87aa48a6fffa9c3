import type { Finding } from '../assess/finding.ts';
import type { BoundChunk } from '../model/bound.ts';
import { ruleNamed } from './all.ts';
import { cannotBeSetAside, unusedAllowance } from './allowance-rules.ts';
import type { TextRule } from './rule.ts';
import { unknownRule, unknownRuleDraft } from './unknown-rule.ts';
import { whyItStays } from './why-it-stays.ts';

const say = (rule: TextRule, place: Finding['place'], message: string, help: string): Finding => ({ code: rule.name, severity: rule.severity, place, message, why: rule.why, help, source: rule.source, related: [], fixes: [] });

/**
 * Takes out findings that a written reason sets aside. An error and a finding on a rating stay, and the attempt is said;
 * a reason that sets nothing aside is said too, once the findings are complete.
 */
export function applyAllowances(chunks: readonly BoundChunk[], findings: readonly Finding[], complete: boolean): Finding[] {
  const inChunk = byChunkAndCode(chunks, findings);
  const aside = new Set<Finding>();
  const said: Finding[] = [];
  for (const chunk of chunks) {
    const { text } = chunk.chunk;
    let line: { readonly start: number; readonly end: number } | undefined;
    for (const allowance of chunk.allowances) {
      const rule = ruleNamed(allowance.code);
      if (rule === undefined) {
        const start = text.indexOf(allowance.code, allowance.place.start);
        const draft = unknownRuleDraft(allowance.code, { ...allowance.place, start, end: start + allowance.code.length });
        said.push({ code: unknownRule.name, severity: unknownRule.severity, why: unknownRule.why, source: unknownRule.source, related: [], ...draft, fixes: draft.fixes ?? [] } as Finding);
        continue;
      }
      // Comments that stand in a stack speak of the same line.
      if (line?.start !== allowance.target) line = { start: allowance.target, end: lineEndFrom(text, allowance.target) };
      const meant = within(inChunk.get(chunk.chunk)?.get(allowance.code) ?? [], line.start, line.end).filter((f) => !aside.has(f));
      if (meant.length === 0) {
        if (complete) said.push(say(unusedAllowance, allowance.place, `nothing is found here that \`${allowance.code}\` could set aside`, 'remove the comment'));
      } else for (const finding of meant) if (whyItStays(rule, finding.severity) === undefined) aside.add(finding);
      const stays = meant.map((f) => whyItStays(rule, f.severity)).find((why) => why !== undefined);
      if (stays !== undefined) said.push(say(cannotBeSetAside, allowance.place, `\`${allowance.code}\` ${stays} and is not set aside`, 'remove the comment, and change what the finding speaks of'));
    }
  }
  return [...findings.filter((f) => !aside.has(f)), ...said];
}

/** Findings of the chunks by rule, in the order of their places. */
function byChunkAndCode(chunks: readonly BoundChunk[], findings: readonly Finding[]): Map<object, Map<string, Finding[]>> {
  const lists = new Map<object, Map<string, Finding[]>>(chunks.map((c) => [c.chunk, new Map()]));
  for (const finding of findings) {
    const codes = lists.get(finding.place.chunk);
    const list = codes?.get(finding.code);
    if (list === undefined) codes?.set(finding.code, [finding]);
    else list.push(finding);
  }
  for (const codes of lists.values()) for (const list of codes.values()) list.sort((a, b) => a.place.start - b.place.start);
  return lists;
}

function within(sorted: readonly Finding[], start: number, end: number): readonly Finding[] {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (sorted[mid]!.place.start < start) low = mid + 1;
    else high = mid;
  }
  let to = low;
  while (to < sorted.length && sorted[to]!.place.start <= end) to++;
  return sorted.slice(low, to);
}

/** Where the line that holds an offset ends, before its line break. */
function lineEndFrom(text: string, offset: number): number {
  let at = offset;
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}
