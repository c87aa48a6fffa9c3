import type { Place } from '../base/span.ts';
import type { Given } from '../mechanics/derivation.ts';
import type { DayNumber } from '../model/day.ts';
import { show, unitOf } from './show.ts';
import { exactly } from '../units/amount.ts';

const secondsADay = 86_400;

/** Time from a written date to the day that is judged. */
export const timeSince = (then: DayNumber, now: DayNumber, written: Place): Given => ({ amount: exactly((now - then) * secondsADay), kind: 'time', origin: { from: 'written', place: written } });

/** Days that a limit allows, with the limit as it is written where that is not in days. */
export function limitInDays(limit: Given): string {
  const days = `${daysIn(limit)} days`;
  const written = unitOf(limit);
  return written === undefined || written.symbol === 'days' ? days : `${show(limit)} (${days})`;
}

export const daysIn = (time: Given): number => Math.floor(time.amount.low / secondsADay + 1e-9);
