import type { Assessed, AssessedRepair, Assessing } from '../assess/assessing.ts';
import type { Finding } from '../assess/finding.ts';
import type { BoundBlock, Problem } from '../model/bound.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import { ruleNamed, rules } from './all.ts';
import { Judge, type NotJudged, type RuleHead } from './judge.ts';
import type { Rule, Subjects } from './rule.ts';
import { shownAs } from './shown-as.ts';

/** Everything that is said about one block in one scope on one day. */
export interface JudgedBlock {
  readonly block: BoundBlock;
  /** What it comes to. Not held, because hardly anybody asks: it is worked out again when it is not at hand any more. */
  readonly assessed: Assessed;
  readonly findings: readonly Finding[];
  readonly notJudged: readonly NotJudged[];
  /** Checks that could be made, and how many of them failed. */
  readonly made: number;
  readonly failed: number;
  /** What the scope was asked: while it answers the same, all of this stays true. */
  readonly asked: readonly string[];
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

/** How blocks are judged: in which scope, on which day, with what was worked out lately at hand. */
export interface Judging {
  assessing(): Assessing;
}

class Judged implements JudgedBlock {
  readonly block: BoundBlock;
  readonly findings: readonly Finding[];
  readonly notJudged: readonly NotJudged[];
  readonly made: number;
  readonly failed: number;
  readonly asked: readonly string[];
  readonly #judging: Judging;

  constructor(block: BoundBlock, judging: Judging) {
    const assessing = judging.assessing();
    const assessed = assessing.block(block);
    const judge = new Judge();
    run(checksOfHead(block.definition.head), block, judge, assessing);
    if (assessed.kind !== 'other') run(checksOfKind(assessed.kind), assessed, judge, assessing);
    // What a plan would leave is judged like a line; only what the plan itself writes is said here.
    if (assessed.kind === 'repair') judge.within(block.chunk, () => run(checksOfKind('line'), assessed.after, judge, assessing));
    const problems = problemsOf(assessed);
    this.block = block;
    this.findings = problems.length === 0 && judge.findings.length === 0 ? none : [...problems.map(findingOfProblem), ...judge.findings].flatMap((finding) => shownAs(finding, assessing.practice) ?? []);
    this.notJudged = judge.notJudged.length === 0 ? none : judge.notJudged;
    this.made = judge.made;
    this.failed = judge.failed;
    this.asked = [...assessing.reader.asked];
    this.#judging = judging;
  }

  get assessed(): Assessed {
    return this.#judging.assessing().block(this.block);
  }
}

export const judgeBlock = (block: BoundBlock, judging: Judging): JudgedBlock => new Judged(block, judging);

/** What rules of lines find on the line that a repair leaves, wherever it stands. */
export function findingsAfter(repair: AssessedRepair, assessing: Assessing): readonly Finding[] {
  const judge = new Judge();
  run(checksOfKind('line'), repair.after, judge, assessing);
  return judge.findings;
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
