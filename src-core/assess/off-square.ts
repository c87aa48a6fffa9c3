import type { Place } from '../base/span.ts';
import { asGiven, unknown, type Value } from '../mechanics/derivation.ts';
import { nameOf } from '../model/bound.ts';
import { drumSquareToWay } from '../trade/plan-sources.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedPull } from './assess-pull.ts';
import { maybeFact, statementOf } from './facts.ts';

export interface OffSquare {
  /** Undefined where nothing speaks of directions. */
  readonly angle: Value | undefined;
  /** Where it is written, or where the place stands that it follows from. */
  readonly place: Place;
  readonly from: 'written' | 'places' | 'nothing';
}

/** Places are paced: so little from the way of the load they do not tell from none (our own careful choice, as for the angle at a block). */
const paced_rad = (10 * Math.PI) / 180;

/**
 * How far off square the line comes on to the drum. A vehicle that stands and winches may face anywhere, so places tell it only where
 * the winch goes with the load. A plan without places does not speak of directions at all: nothing is judged of it, and its brief has the crew look.
 */
export function offSquareOf({ block, name, rigging }: AssessedPull): OffSquare {
  const statement = statementOf(block, 'off-square');
  const written = maybeFact(block, 'off-square', 'angle');
  if (written !== undefined) return { angle: written, place: statement?.place ?? block.namePlace, from: 'written' };
  const stands = block.statements.filter((s) => s.definition.head === 'stands');
  const lead = rigging.plannedLead;
  if (lead === undefined || lead <= paced_rad + 1e-9) {
    const cause = { key: `off-square of ${name}`, says: `how far off square the line of \`${name}\` comes on to the drum is not given`, help: 'add `off-square`, looked at from behind the winch', place: block.namePlace };
    return { angle: stands.length === 0 || rigging.problems.length > 0 || lead !== undefined ? undefined : unknown(cause), place: block.namePlace, from: lead === undefined ? 'nothing' : 'places' };
  }
  const first = rigging.parts[0]!.to;
  const place = (stands.find((s) => nameOf(s.values, 'what')?.name === first) ?? stands[0]!).place;
  const angle = asGiven({
    calculation: 'off-square-by-places', means: 'angle off square at the drum', symbol: 'θ', kind: 'angle', amount: exactly(lead), formula: 'θ = arctan(across / along)',
    inputs: [], sources: [sources.geometry, drumSquareToWay], assumptions: [drumSquareToWay.title], notes: [],
  });
  return { angle, place, from: 'places' };
}
