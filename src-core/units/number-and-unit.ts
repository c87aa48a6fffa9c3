import { units } from './unit-table.ts';

const symbols = units.map(({ symbol }) => symbol.replace(/[\^$.*+?()[\]{}|/]/g, '\\$&')).join('|');
const unitBehind = `(?:${symbols})(?![\\p{L}\\d])`;
/** The space between a number and its unit: 78 and % on two lines are read as two things. */
const between = new RegExp(`(?<=\\d) (?=${unitBehind})`, 'gu');
const elsewhere = new RegExp(`(?<!\\d) | (?!${unitBehind})`, 'u');

/** The text with every number tied to its unit, for whatever cuts lines by itself. */
export const tied = (text: string): string => text.replace(between, '\u00A0');

/** What stands between the spaces of a text, each number with its unit. */
export const wordsOf = (text: string): string[] => text.split(elsewhere);
