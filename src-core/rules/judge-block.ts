import type { AssessedBlocks } from '../assess/assessed-blocks.ts';
import type { Assessed } from '../assess/assessing.ts';
import { Assessing } from '../assess/assessing.ts';
import type { Finding, Severity } from '../assess/finding.ts';
import { severities } from '../assess/finding.ts';
import type { BoundBlock, Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { Reader, type Scope } from '../model/scope.ts';
import { ruleNamed, rules } from './all.ts';
import { Judge, type NotJudged } from './judge.ts';
import type { Rule, Subjects } from './rule.ts';

/** Everything that is said about one block in one scope on one day. */
export interface JudgedBlock {
  readonly block: BoundBlock;
  readonly assessed: Assessed;
  readonly findings: readonly Finding[];
  readonly notJudged: readonly NotJudged[];
  /** Checks that could be made, and how many of them failed. */
  readonly made: number;
  readonly failed: number;
  /** What the scope was asked: while it answers the same, all of this stays true. */
  readonly asked: ReadonlySet<string>;
}

const rulesOn = new Map<string, Rule[]>();
for (const rule of rules) {
  if (rule.on === 'text') continue;
  const list = rulesOn.get(rule.on) ?? [];
  list.push(rule);
  rulesOn.set(rule.on, list);
}

/** `blocks` keeps what blocks came to from one call to the next. */
export function judgeBlock(block: BoundBlock, scope: Scope, day: DayNumber, blocks?: AssessedBlocks): JudgedBlock {
  const reader = new Reader(scope);
  const assessing = new Assessing(reader, day, blocks);
  const assessed = assessing.block(block);
  const judge = new Judge();
  const run = <K extends keyof Subjects>(on: K, subject: Subjects[K]): void => {
    for (const rule of rulesOn.get(on) ?? []) {
      judge.begin(rule);
      (rule as unknown as { check(s: Subjects[K], j: Judge, a: Assessing): void }).check(subject, judge, assessing);
    }
  };
  run('block', block);
  if (assessed.kind !== 'other') run(assessed.kind, assessed as never);
  // What a plan would leave is judged like a line; only what the plan itself writes is said here.
  if (assessed.kind === 'repair') judge.within(block.chunk, () => run('line', assessed.after));
  const problems = problemsOf(assessed);
  const findings = [...problems.map(findingOfProblem), ...judge.findings].map((finding) => setSeverity(finding, assessing));
  return { block, assessed, findings: findings.filter((f): f is Finding => f !== undefined), notJudged: judge.notJudged, made: judge.made, failed: judge.failed, asked: reader.asked };
}

function problemsOf(assessed: Assessed): readonly Problem[] {
  if (assessed.kind === 'line' || assessed.kind === 'chain' || assessed.kind === 'pull') return assessed.problems;
  return assessed.kind === 'repair' ? assessed.after.problems : [];
}

/** A problem of the text as a finding; its rule gives severity, reason and source. */
export function findingOfProblem(problem: Problem): Finding {
  const rule = ruleNamed(problem.code);
  return {
    code: problem.code,
    severity: rule?.severity ?? 'error',
    place: problem.place,
    message: problem.message,
    why: rule?.why,
    help: problem.help,
    source: rule?.source,
    related: problem.related ?? [],
    fixes: problem.fixes ?? [],
  };
}

/** The shop's own severity; a finding that cites a rating is never lowered. */
function setSeverity(finding: Finding, assessing: Assessing): Finding | undefined {
  const level = assessing.practice.severityOf(finding.code);
  if (level === undefined) return finding;
  const rule = ruleNamed(finding.code);
  const lowered = level === 'off' || severities.indexOf(level as Severity) > severities.indexOf(finding.severity);
  if (lowered && rule?.citesRating === true) return finding;
  return level === 'off' ? undefined : { ...finding, severity: level as Severity };
}
