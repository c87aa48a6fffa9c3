import type { Place } from '../base/span.ts';
import type { Given } from '../mechanics/derivation.ts';
import type { DayNumber } from '../model/day.ts';
import { exactly } from '../units/amount.ts';

const secondsADay = 86_400;

/** Time from a written date to the day that is judged. */
export const timeSince = (then: DayNumber, now: DayNumber, written: Place): Given => ({ amount: exactly((now - then) * secondsADay), kind: 'time', origin: { from: 'written', place: written } });

export const daysIn = (time: Given): number => Math.floor(time.amount.low / secondsADay + 1e-9);
