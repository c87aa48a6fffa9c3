import type { Finding } from '../assess/finding.ts';
import type { Place } from '../base/span.ts';
import type { Cause } from '../mechanics/derivation.ts';
import { missingFact } from './missing-fact-rule.ts';

/**
 * A missing fact, at the place where it could be written, with the number of checks that wait for it. What hangs on it
 * is silent; undefined when the cause was said already, as a problem of the text.
 */
export function sayMissingFact(cause: Cause, place: Place, checks: number): Finding | undefined {
  if (cause.reported === true) return undefined;
  return {
    code: missingFact.name,
    severity: missingFact.severity,
    place: cause.place ?? place,
    message: `${cause.says}; ${checks === 1 ? '1 check' : `${checks} checks`} not judged`,
    why: missingFact.why,
    help: cause.help,
    source: missingFact.source,
    related: [],
    fixes: [],
  };
}
