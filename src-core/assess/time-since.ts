import type { Place } from '../base/span.ts';
import { isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { monthsOn, type DayNumber } from '../model/day.ts';
import { exactly } from '../units/amount.ts';
import { printNumber } from '../units/print.ts';
import { unitNamed } from '../units/unit-table.ts';
import { show, unitOf } from './show.ts';

const secondsADay = 86_400;

/** Time from a written date to the day that is judged. */
export const timeSince = (then: DayNumber, now: DayNumber, written: Place): Given => ({ amount: exactly((now - then) * secondsADay), kind: 'time', origin: { from: 'written', place: written } });

/** How many months a time is; undefined where it is not a whole number of them. */
export function wholeMonths({ kind, amount }: Pick<Given, 'kind' | 'amount'>): number | undefined {
  const months = amount.low / unitNamed('months')!.factor;
  const whole = Math.round(months);
  return kind === 'time' && amount.low === amount.high && whole >= 1 && whole <= 1200 && Math.abs(months - whole) < 1e-9 ? whole : undefined;
}

/** A limit of whole months, counted from a day as a calendar does: half a year is up to 184 days. Any other as it is. */
export function byCalendar<T extends Value>(then: DayNumber, limit: T): T {
  const months = isUnknown(limit) ? undefined : wholeMonths(limit);
  return months === undefined ? limit : { ...limit, amount: exactly((monthsOn(then, months) - then) * secondsADay) };
}

/** Days that a limit allows, with the limit as it is written where that is not in days; `counted` where the calendar makes it more or less. */
export function limitInDays(limit: Given, counted: Given = limit): string {
  const days = daysText(counted);
  const unit = unitOf(limit);
  return unit === undefined || unit.symbol === 'days' ? days : `${show(limit)} (${days})`;
}

export const daysIn = (time: Given): number => Math.floor(time.amount.low / secondsADay + 1e-9);

export function daysText(time: Given): string {
  const days = daysIn(time);
  return `${printNumber(days, 'nearest', 0)} ${days === 1 ? 'day' : 'days'}`;
}
