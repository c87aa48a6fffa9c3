import { wordsOf } from '../units/number-and-unit.ts';

/**
 * Cuts a text at its spaces, but for those before a unit, into lines of at most `width` characters, the first of at most `first`; a longer word has a
 * line of its own.
 */
export function wrapText(text: string, width: number, first = width): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text)) {
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
