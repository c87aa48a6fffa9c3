import type { Finding } from '../assess/finding.ts';
import type { Cause } from '../mechanics/derivation.ts';
import type { JudgedBlock } from './judge-block.ts';
import type { Place } from '../base/span.ts';
import { missingFact } from './missing-fact-rule.ts';

/**
 * One finding for each missing fact, at the place where it could be written, with the number of checks that wait for
 * it. What hangs on it is silent.
 */
export function missingFacts(blocks: readonly Pick<JudgedBlock, 'notJudged'>[]): Finding[] {
  const causes = new Map<string, { cause: Cause; place: Place; count: number }>();
  for (const block of blocks) {
    for (const { cause, place } of block.notJudged) {
      const known = causes.get(cause.key);
      if (known === undefined) causes.set(cause.key, { cause, place: cause.place ?? place, count: 1 });
      else causes.set(cause.key, { ...known, count: known.count + 1 });
    }
  }
  const findings: Finding[] = [];
  for (const { cause, place, count } of causes.values()) {
    if (cause.reported === true) continue;
    findings.push({
      code: missingFact.name,
      severity: missingFact.severity,
      place,
      message: `${cause.says}; ${count === 1 ? '1 check' : `${count} checks`} not judged`,
      why: missingFact.why,
      help: cause.help,
      source: missingFact.source,
      related: [],
      fixes: [],
    });
  }
  return findings;
}
