import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { isUnknown, unknown, type Derived, type Given, type Known, type Value } from './derivation.ts';
import { taperDropMark } from './taper-drop-mark.ts';

export interface TaperStep {
  /** Counted from the start of the taper towards the tail end. */
  readonly step: number;
  /** From the tail end. */
  readonly at: Derived;
  /** What is done there, in words. */
  readonly says: string;
  /** Strands left towards the tail end. */
  readonly strandsLeft: number;
}

const count = (value: number): Given => ({ amount: exactly(value), kind: 'count', origin: { from: 'constant', source: sources['maker-12-strand-taper'] } });

/**
 * Which strands come out where. Half the strands turn left and half turn right; every second one of each is dropped, a left and a
 * right one together, so that half of them are left at the tip. Known for numbers of strands that divide by four.
 */
export function taperSchedule(taper: Value, strands: Value): Known<readonly TaperStep[]> {
  if (isUnknown(taper)) return taper;
  if (isUnknown(strands)) return strands;
  const number = strands.amount.low;
  const place = strands.origin.from === 'written' ? strands.origin.place : undefined;
  if (strands.amount.low !== strands.amount.high || !Number.isInteger(number) || number < 4 || number > 64 || number % 4 !== 0) {
    return unknown({
      key: `taper-schedule: ${number} strands`,
      says: `no way of tapering a line of ${number} strands is published; every second left and right strand comes out of 8, 12, 16 or other numbers that divide by four`,
      help: 'taper by the maker\'s instruction for this line',
      place,
    });
  }
  const pairs = number / 4;
  const steps: TaperStep[] = [];
  for (let i = 1; i <= pairs; i++) {
    const at = taperDropMark({ t: taper, i: count(i), m: count(pairs) });
    if (isUnknown(at)) return at;
    steps.push({ step: i, at, says: i === 1 ? 'taper starts: drop one left and one right strand' : 'pass over one left and one right strand, drop the next of each', strandsLeft: number - 2 * i });
  }
  return steps;
}
