import type { AssessedBlocks } from '../assess/assessed-blocks.ts';
import type { Assessed } from '../assess/assessing.ts';
import { Assessing } from '../assess/assessing.ts';
import type { Finding, Severity } from '../assess/finding.ts';
import { severities } from '../assess/finding.ts';
import type { BoundBlock, Problem } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { Reader, type Scope } from '../model/scope.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import { ruleNamed, rules } from './all.ts';
import { Judge, type NotJudged, type RuleHead } from './judge.ts';
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

const none: readonly never[] = [];

/** A rule with its subject left open: whoever runs it has the one that it is on. */
interface Check extends RuleHead {
  readonly on: string;
  readonly heads?: readonly NameKind[];
  check(subject: never, judge: Judge, assessing: Assessing): void;
}

const checks = rules.filter((rule): rule is Exclude<Rule, { on: 'text' }> => rule.on !== 'text') as readonly Check[];

/** The rules that look at a block of a head as it is bound, and those that look at what it comes to. */
const bound = new Map<NameKind, readonly Check[]>();
const worked = new Map<keyof Subjects, readonly Check[]>();

function checksOf<K>(kept: Map<K, readonly Check[]>, key: K, runs: (check: Check) => boolean): readonly Check[] {
  let list = kept.get(key);
  if (list === undefined) kept.set(key, (list = checks.filter(runs)));
  return list;
}

const checksOfHead = (head: NameKind): readonly Check[] => checksOf(bound, head, ({ on, heads }) => on === 'block' && (heads === undefined || heads.includes(head)));
const checksOfKind = (kind: keyof Subjects): readonly Check[] => checksOf(worked, kind, ({ on }) => on === kind);

function run(list: readonly Check[], subject: unknown, judge: Judge, assessing: Assessing): void {
  for (let i = 0; i < list.length; i++) {
    judge.begin(list[i]!);
    list[i]!.check(subject as never, judge, assessing);
  }
}

/** `blocks` keeps what blocks came to from one call to the next. */
export function judgeBlock(block: BoundBlock, scope: Scope, day: DayNumber, blocks?: AssessedBlocks): JudgedBlock {
  const reader = new Reader(scope);
  const assessing = new Assessing(reader, day, blocks);
  const assessed = assessing.block(block);
  const judge = new Judge();
  run(checksOfHead(block.definition.head), block, judge, assessing);
  if (assessed.kind !== 'other') run(checksOfKind(assessed.kind), assessed, judge, assessing);
  // What a plan would leave is judged like a line; only what the plan itself writes is said here.
  if (assessed.kind === 'repair') judge.within(block.chunk, () => run(checksOfKind('line'), assessed.after, judge, assessing));
  const problems = problemsOf(assessed);
  const findings = problems.length === 0 && judge.findings.length === 0 ? none : [...problems.map(findingOfProblem), ...judge.findings].flatMap((finding) => setSeverity(finding, assessing) ?? []);
  return { block, assessed, findings, notJudged: judge.notJudged.length === 0 ? none : judge.notJudged, made: judge.made, failed: judge.failed, asked: reader.asked };
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
