import { Assessing, type AssessedRepair } from '../assess/assessing.ts';
import type { Finding, Severity } from '../assess/finding.ts';
import type { BoundBlock } from '../model/bound.ts';
import { Reader } from '../model/scope.ts';
import type { JudgedRoot } from '../project.ts';
import { ruleNamed } from '../rules/all.ts';
import { damageLeftInService } from '../rules/damage-left-in-service.ts';
import { findingOfProblem, findingsAfter, type JudgedBlock } from '../rules/judge-block.ts';
import { missingFact } from '../rules/missing-fact-rule.ts';
import { heading, quiet, type PaperPart } from './document.ts';

/** What a paper is made from: a rig with all it uses, judged on a day, and what its file is called. */
export interface PaperSubject {
  readonly root: JudgedRoot;
  readonly path: string;
  readonly file: string;
  /** The day, `2026-06-22`. */
  readonly day: string;
}

/** Blocks of one kind in the file itself first, then in the files that it uses. */
export function blocksOf({ root, path }: Pick<PaperSubject, 'root' | 'path'>, head: string): JudgedBlock[] {
  const own = root.files.get(path)?.blocks ?? [];
  const others = [...root.files].filter(([p]) => p !== path).flatMap(([, file]) => file.blocks);
  return [...own, ...others].filter((judged) => judged.block.definition.head === head);
}

/** Looks into other blocks of the rig, on the day of the subject. */
export const assessingOf = ({ root }: Pick<PaperSubject, 'root'>): Assessing => new Assessing(new Reader(root.scope), root.day);

/** What is found on some blocks, in the order of the file. */
export function findingsOn({ root }: Pick<PaperSubject, 'root'>, blocks: readonly BoundBlock[]): Finding[] {
  const on = (finding: Finding): boolean => blocks.some((b) => finding.place.chunk === b.chunk && finding.place.start >= b.place.start && finding.place.end <= b.place.end);
  return [...root.files.values()].flatMap((file) => file.findings.filter(on));
}

/** Errors that stand in no block: a file that is not found, marks of a merge, a brace too many. What they make of the rest nobody knows. */
export function errorsOutside({ root }: Pick<PaperSubject, 'root'>): Finding[] {
  return [...root.files.values()].flatMap(({ file, findings }) => {
    const errors = findings.filter((f) => f.severity === 'error');
    if (errors.length === 0) return [];
    const blocks = file.bound.flatMap((c) => c.blocks);
    return errors.filter((f) => !blocks.some((b) => f.place.chunk === b.chunk && f.place.start >= b.place.start && f.place.end <= b.place.end));
  });
}

/** Some blocks with all that they speak of, and all that this speaks of in turn: whatever has a name that one of them uses. */
export function blocksBehind({ root }: Pick<PaperSubject, 'root'>, blocks: readonly BoundBlock[]): BoundBlock[] {
  const behind = new Set(blocks);
  const reader = new Reader(root.scope);
  // What is added while it is walked is walked too.
  for (const block of behind) for (const { name } of block.uses) for (const declared of reader.declarations(name)) behind.add(declared.block);
  for (const block of [...behind]) if (block.name !== undefined) for (const declared of reader.declarations(block.name)) behind.add(declared.block);
  return [...behind];
}

/** Something on some blocks that a written reason sets aside: a paper that people stand around names it. */
export interface SetAside {
  readonly code: string;
  readonly severity: Severity;
  readonly says: string;
  readonly reason: string;
}

/** What written reasons set aside on some blocks. */
export function setAsideOn({ root }: Pick<PaperSubject, 'root'>, blocks: readonly BoundBlock[]): SetAside[] {
  const aside: SetAside[] = [];
  for (const { file } of root.files.values()) {
    for (const { chunk, allowances, problems } of file.bound) {
      if (allowances.length === 0) continue;
      const here = blocks.filter((b) => b.chunk === chunk);
      const made = [...problems.map(findingOfProblem), ...here.flatMap((b) => root.judgedBlock(b)?.findings ?? [])];
      for (const { code, reason, target } of allowances) {
        if (!here.some(({ place }) => place.start <= target && target < place.end)) continue;
        const end = target + /^[^\r\n]*/.exec(chunk.text.slice(target))![0].length;
        const found = made.filter((f) => f.code === code && f.severity !== 'error' && f.place.start >= target && f.place.start <= end);
        for (const { message, severity } of found) aside.push({ code, severity, says: message, reason });
        if (code === missingFact.name) aside.push({ code, severity: 'information', says: 'a fact is not given', reason });
      }
    }
  }
  return aside;
}

/** What is found on the line of a repair, without what the repair puts right. */
export function findingsLeft(subject: Pick<PaperSubject, 'root'>, repair: AssessedRepair): Finding[] {
  const key = ({ code, place }: Finding): string => `${code}:${place.start}`;
  const left = new Set(findingsAfter(repair, assessingOf(subject)).map(key));
  // Of damage the repair itself says that it leaves it.
  return findingsOn(subject, [repair.before.block]).filter((f) => f.code !== damageLeftInService.name && (ruleNamed(f.code)?.on !== 'line' || left.has(key(f))));
}

/** Findings for paper: errors first, then warnings; of the others only what could not be judged. */
export function findingParts(findings: readonly Finding[]): PaperPart[] {
  const rank = (f: Finding): number => (f.severity === 'error' ? 0 : f.severity === 'warning' ? 1 : 2);
  return [...findings]
    .filter((f) => f.severity === 'error' || f.severity === 'warning' || f.code === 'missing-fact')
    .sort((a, b) => rank(a) - rank(b))
    .map((f): PaperPart => ({ part: 'finding', severity: f.code === 'missing-fact' ? 'not judged' : f.severity, code: f.code, says: f.message, help: f.help }));
}

/** How many findings a paper leaves out, as a sentence; undefined when there are none. */
export function leftOut(findings: readonly Finding[]): string | undefined {
  const n = findings.length - findingParts(findings).length;
  return n === 0 ? undefined : `${n} further ${n === 1 ? 'remark is' : 'remarks are'} left out here; \`linewright check\` shows ${n === 1 ? 'it' : 'them'}.`;
}

/** Findings under a heading, with how many more there are; nothing when there are none. */
export function foundParts(says: string, findings: readonly Finding[]): PaperPart[] {
  if (findings.length === 0) return [];
  const rest = leftOut(findings);
  return [heading(says), ...findingParts(findings), ...(rest === undefined ? [] : [quiet(rest)])];
}

/** The small print of every paper. */
export const deference: readonly string[] = [
  'Figures come from what is written in the rig, and are compared with the limits given by the sources that the build sheet names. Nothing here has seen the line: damage that is not written down is not counted, and what is not known is not judged.',
  'The maker\'s data for this line and this gear, local codes and licensed practice go before anything on this paper.',
];
