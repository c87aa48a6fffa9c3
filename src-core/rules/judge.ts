import { isAbove, isBelow } from '../base/compare.ts';
import type { Draft, Finding, Severity } from '../assess/finding.ts';
import { isUnknown, writtenInputs, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import type { Place } from '../base/span.ts';

/** A check that could not be made, and why. */
export interface NotJudged {
  readonly cause: Cause;
  readonly rule: string;
  /** Where the check would have been made. */
  readonly place: Place;
}

export interface RuleHead {
  readonly name: string;
  readonly severity: Severity;
  readonly why: string;
  readonly source: string;
}

/** The source of rules on how a thing is written. What is written right is no check of what it is worth, and is not counted as one. */
const grammar = 'the grammar of the language';

/** Counts a block's checks and keeps what they found. Every comparison with a limit goes through it. */
export class Judge {
  readonly findings: Finding[] = [];
  readonly notJudged: NotJudged[] = [];
  made = 0;
  failed = 0;
  #rule: RuleHead | undefined;
  #only: object | undefined;

  /** The rule whose checks follow. */
  begin(rule: RuleHead): void {
    this.#rule = rule;
  }

  /** Makes checks of which only those standing in `chunk` count. */
  within(chunk: object, checks: () => void): void {
    this.#only = chunk;
    checks();
    this.#only = undefined;
  }

  #elsewhere(place: Place): boolean {
    return this.#only !== undefined && place.chunk !== this.#only;
  }

  /** Says a finding of the present rule. */
  report(draft: Draft): void {
    const rule = this.#rule!;
    if (this.#elsewhere(draft.place)) return;
    this.findings.push({
      code: rule.name,
      severity: draft.severity ?? rule.severity,
      place: draft.place,
      message: draft.message,
      why: draft.why ?? rule.why,
      help: draft.help,
      source: draft.source ?? rule.source,
      related: draft.related ?? [],
      fixes: draft.fixes ?? [],
    });
  }

  cannot(cause: Cause, place: Place): void {
    if (this.#elsewhere(place)) return;
    this.notJudged.push({ cause, rule: this.#rule!.name, place });
  }

  /** A plain condition: fails with a finding. */
  holds(condition: boolean, draft: () => Draft): boolean {
    // Where only one chunk counts, a plain condition tells its place by failing; what holds was counted with its own line.
    if (this.#only !== undefined && (condition || this.#elsewhere(draft().place))) return condition;
    if (this.#rule!.source !== grammar) {
      this.made++;
      if (!condition) this.failed++;
    }
    if (!condition) this.report(draft());
    return condition;
  }

  /**
   * `value` is at least `limit`, at the careful ends of both. An unknown value or limit is counted as not judged.
   * `unless` is a cause that more may be known to the worse: then what fails, fails, and what holds is not judged.
   */
  atLeast(value: Value, limit: Value, place: Place, draft: (value: Given, limit: Given) => Draft, unless?: Cause): boolean | undefined {
    // What is at most so much may still be too little.
    if (isUnknown(value) && value.atMost !== undefined) return this.atLeast(value.atMost, limit, place, draft, value.unknown);
    return this.#compare(value, limit, place, (v, l) => isBelow(v.amount.low, l.amount.high), draft, unless);
  }

  /** `value` is at most `limit`, at the careful ends of both. */
  atMost(value: Value, limit: Value, place: Place, draft: (value: Given, limit: Given) => Draft, unless?: Cause): boolean | undefined {
    if (isUnknown(limit) && limit.atMost !== undefined) return this.atMost(value, limit.atMost, place, draft, limit.unknown);
    return this.#compare(value, limit, place, (v, l) => isAbove(v.amount.high, l.amount.low), draft, unless);
  }

  #compare(value: Value, limit: Value, place: Place, fails: (value: Given, limit: Given) => boolean, draft: (value: Given, limit: Given) => Draft, unless: Cause | undefined): boolean | undefined {
    if (this.#elsewhere(place)) return undefined;
    if (isUnknown(value)) {
      this.cannot(value.unknown, place);
      return undefined;
    }
    if (isUnknown(limit)) {
      this.cannot(limit.unknown, place);
      return undefined;
    }
    if (fails(value, limit)) {
      this.made++;
      this.failed++;
      const said = draft(value, limit);
      this.report({ ...said, related: said.related ?? relatedPlaces(value, limit, said.place) });
      return false;
    }
    if (unless !== undefined) {
      this.cannot(unless, place);
      return undefined;
    }
    this.made++;
    return true;
  }
}

/** Every written line that fed the two numbers, without the one the finding stands on; each with what it says. */
export function relatedPlaces(value: Given, limit: Given, own: Place): { place: Place; message: string }[] {
  const related: { place: Place; message: string }[] = [];
  for (const { place, means } of [...writtenInputs(value), ...writtenInputs(limit)]) {
    if (place.chunk === own.chunk && place.start >= own.start && place.end <= own.end) continue;
    if (related.some((r) => r.place.chunk === place.chunk && r.place.start === place.start)) continue;
    related.push({ place, message: means });
    if (related.length === 6) break;
  }
  return related;
}
