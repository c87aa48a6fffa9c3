import type { AssessedChain } from '../assess/assess-chain.ts';
import type { AssessedGear } from '../assess/assess-gear.ts';
import type { AssessedLine } from '../assess/assess-line.ts';
import type { AssessedWinch } from '../assess/assess-winch.ts';
import type { AssessedRepair, Assessing } from '../assess/assessing.ts';
import type { Severity } from '../assess/finding.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { Judge } from './judge.ts';

/** What rules look at. `text` rules name the problems that reading and binding find by themselves. */
export interface Subjects {
  line: AssessedLine;
  winch: AssessedWinch;
  gear: AssessedGear;
  chain: AssessedChain;
  repair: AssessedRepair;
  /** Any block, as it is bound. */
  block: BoundBlock;
}

interface RuleText {
  /** Says the bad thing and reads well after "allow". */
  readonly name: string;
  readonly severity: Severity;
  readonly summary: string;
  /** One or two sentences: what goes wrong when it is passed. */
  readonly why: string;
  /** Document and clause, or `common practice`, or `our own careful choice, because ...`. */
  readonly source: string;
  /** A whole file in which it fires exactly once. */
  readonly bad: string;
  /** A whole file in which it does not fire. */
  readonly good: string;
  /** It compares with a rating that a maker or a standard gives: nobody may set it aside. */
  readonly citesRating?: true;
  /** Day for which the examples are judged, when not 2026-07-01. */
  readonly exampleDay?: string;
}

export interface TextRule extends RuleText {
  readonly on: 'text';
}

export interface CheckRule<K extends keyof Subjects = keyof Subjects> extends RuleText {
  readonly on: K;
  check(subject: Subjects[K], judge: Judge, assessing: Assessing): void;
}

export type Rule = TextRule | { [K in keyof Subjects]: CheckRule<K> }[keyof Subjects];

export const defineRule = <K extends keyof Subjects>(rule: CheckRule<K>): CheckRule<K> => rule;

/** A rule for something that reading or binding the text reports under the same code. */
export const defineTextRule = (rule: Omit<TextRule, 'on'>): TextRule => ({ ...rule, on: 'text' });
