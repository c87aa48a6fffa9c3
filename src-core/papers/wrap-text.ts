import { units } from '../units/unit-table.ts';

const symbols = units.map(({ symbol }) => symbol.replace(/[\^$.*+?()[\]{}|/]/g, '\\$&')).join('|');
const unitBehind = `(?:${symbols})(?![\\p{L}\\d])`;
/** The space between a number and its unit: 78 and % on two lines are read as two things. */
const between = new RegExp(`(?<=\\d) (?=${unitBehind})`, 'gu');
const elsewhere = new RegExp(`(?<!\\d) | (?!${unitBehind})`, 'u');

/** The text with every number tied to its unit, for whatever cuts lines by itself. */
export const tied = (text: string): string => text.replace(between, '\u00A0');

/**
 * Cuts a text at its spaces, but for those before a unit, into lines of at most `width` characters, the first of at most `first`; a longer word has a
 * line of its own.
 */
export function wrapText(text: string, width: number, first = width): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(elsewhere)) {
    if (line !== '' && line.length + 1 + word.length > (lines.length === 0 ? first : width)) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines;
}

const least = 20;

/** The same with an indent for the first line and one for those that follow. */
export const wrapIndented = (text: string, width: number, first: string, rest: string): string[] =>
  wrapText(text, Math.max(least, width - rest.length), Math.max(least, width - first.length)).map((line, i) => (i === 0 ? first : rest) + line);
