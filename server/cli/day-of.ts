import { readDay, type DayNumber } from '../../src-core/model/day.ts';
import { Refusal, type Io } from './io.ts';
import type { Words } from './options.ts';

/** The day that everything is judged on, and how it was written. */
export function dayOf(words: Words, io: Io): { readonly day: DayNumber; readonly text: string } {
  const text = words.option('on') ?? io.today();
  const day = readDay(text);
  if (day === undefined) throw new Refusal(`--on \`${text}\` is not a day`, 'write it in full, such as 2026-06-22');
  return { day, text };
}
