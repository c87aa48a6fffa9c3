import type { AssessedAnchor } from '../assess/assess-anchor.ts';
import type { AssessedChain } from '../assess/assess-chain.ts';
import type { AssessedGear } from '../assess/assess-gear.ts';
import type { AssessedKit } from '../assess/assess-kit.ts';
import type { AssessedLine } from '../assess/assess-line.ts';
import type { AssessedPull } from '../assess/assess-pull.ts';
import type { AssessedVehicle } from '../assess/assess-vehicle.ts';
import type { AssessedWinch } from '../assess/assess-winch.ts';
import type { AssessedRepair, Assessing } from '../assess/assessing.ts';
import type { Severity } from '../assess/finding.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { NameKind } from '../vocabulary/shape.ts';
import type { Judge } from './judge.ts';

/** What rules look at. `text` rules name the problems that reading and binding find by themselves. */
export interface Subjects {
  line: AssessedLine;
  winch: AssessedWinch;
  gear: AssessedGear;
  chain: AssessedChain;
  repair: AssessedRepair;
  pull: AssessedPull;
  anchor: AssessedAnchor;
  vehicle: AssessedVehicle;
  kit: AssessedKit;
  /** Any block, as it is bound. */
  block: BoundBlock;
}

export interface RuleText {
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
  /** It says what is not known: no practice may hide that everywhere at once. */
  readonly saysUnknown?: true;
  /** What the good example shows besides, because it cannot be without. */
  readonly goodShows?: readonly string[];
  /** Day for which the examples are judged, when not 2026-07-01. */
  readonly exampleDay?: string;
  /** Other files that stand beside both examples, by path. The example itself is `examplePath`. */
  readonly files?: Readonly<Record<string, string>>;
}

/** Where an example stands in its project. */
export const examplePath = 'example.rig';

export interface TextRule extends RuleText {
  readonly on: 'text';
}

export interface CheckRule<K extends keyof Subjects = keyof Subjects> extends RuleText {
  readonly on: K;
  /** With `block`: it looks at the blocks of these heads only. */
  readonly heads?: readonly NameKind[];
  check(subject: Subjects[K], judge: Judge, assessing: Assessing): void;
}

export type Rule = TextRule | { [K in keyof Subjects]: CheckRule<K> }[keyof Subjects];

const byName = new Map<string, RuleText>();
const registered = <R extends RuleText>(rule: R): R => {
  byName.set(rule.name, rule);
  return rule;
};

/** Every rule that was defined, by name: for rules that speak about rules. Complete once all of them are loaded. */
export const definedRules: ReadonlyMap<string, RuleText> = byName;

export const defineRule = <K extends keyof Subjects>(rule: CheckRule<K>): CheckRule<K> => registered(rule);

/** A rule for something that reading or binding the text reports under the same code. */
export const defineTextRule = (rule: Omit<TextRule, 'on'>): TextRule => registered({ ...rule, on: 'text' });
