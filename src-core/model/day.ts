/** Days since 1970-01-01. No clock is read: the day of judgement is always given. */
export type DayNumber = number;

const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** No line, and no truck, is older. */
export const firstYear = 1900;

/** The day that `2026-06-21` names; undefined when there is no such day or it is not written in full. */
export function readDay(text: string): DayNumber | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < firstYear || month < 1 || month > 12 || day < 1) return undefined;
  const length = month === 2 && isLeap(year) ? 29 : lengths[month - 1]!;
  if (day > length) return undefined;
  // Days from civil date, counting years from March so that the leap day comes last.
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719468;
}

const padded = (year: string, month: string, day: string): string | undefined => {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return readDay(text) === undefined ? undefined : text;
};

/** The date that `2026-6-1` means; undefined when padding it with zeros gives none. */
export function dateMeant(text: string): string | undefined {
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? [];
  return year === undefined ? undefined : padded(year, month!, day!);
}

const monthNames = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const month = '(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]{0,6}\\.?';
const nth = '(\\d{1,2})(?:st|nd|rd|th|\\.)?';
const otherDates: readonly (readonly [pattern: RegExp, order: 'ymd' | 'mdy' | 'dmy' | 'unknown'])[] = [
  [/^(\d{4})[/.\u2010-\u2015\u2212](\d{1,2})[/.\u2010-\u2015\u2212](\d{1,2})(?![\d/.])/, 'ymd'],
  [/^(\d{4})-(\d{2})-(\d{2})T\d{2}:?\d{2}[\d:.,Z+-]*/, 'ymd'],
  [/^(\d{5,9})-(\d{2})-(\d{2})(?!\d)/, 'ymd'],
  [/^(\d{4})(\d{2})(\d{2})(?!\d)/, 'ymd'],
  [/^(\d{1,2})([/.-])(\d{1,2})\2(\d{4}|\d{2})(?!\d)/, 'unknown'],
  [new RegExp(`^${month}[\\s-]+${nth},?[\\s-]+(\\d{4})(?!\\d)`, 'i'), 'mdy'],
  [new RegExp(`^${nth}[\\s-]*${month},?[\\s-]+(\\d{4})(?!\\d)`, 'i'), 'dmy'],
];

/** A date in another way of writing at the start of a text, and the day when only one can be meant. */
export function otherDate(text: string): { readonly written: string; readonly meant: string | undefined } | undefined {
  for (const [pattern, order] of otherDates) {
    const match = pattern.exec(text);
    if (match === null) continue;
    const number = (name: string): string => String(monthNames.indexOf(name.toLowerCase()) + 1);
    const [written, a = '', b = '', c = '', d = ''] = match;
    if (order === 'ymd') return { written, meant: padded(a, b, c) };
    if (order === 'mdy') return { written, meant: padded(c, number(a), b) };
    if (order === 'dmy') return { written, meant: padded(c, number(b), a) };
    const readings = d.length === 4 ? new Set([padded(d, a, c), padded(d, c, a)].filter((r) => r !== undefined)) : new Set<string>();
    return { written, meant: readings.size === 1 ? [...readings][0] : undefined };
  }
  return undefined;
}

/** The same day of the month so many months on, or the last of a shorter month. */
export function monthsOn(then: DayNumber, months: number): DayNumber {
  const [year, month, day] = printDay(then).split('-').map(Number) as [number, number, number];
  const all = year * 12 + month - 1 + months;
  const first = `${Math.floor(all / 12)}-${String((all % 12) + 1).padStart(2, '0')}`;
  for (let d = day; ; d--) {
    const found = readDay(`${first}-${String(d).padStart(2, '0')}`);
    if (found !== undefined || d <= 28) return found ?? then;
  }
}

export function printDay(dayNumber: DayNumber): string {
  const z = dayNumber + 719468;
  const era = Math.floor(z / 146097);
  const dayOfEra = z - era * 146097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const mp = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * mp + 2) / 5) + 1;
  const month = mp < 10 ? mp + 3 : mp - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
