import { wordsOf } from '../units/number-and-unit.ts';

const combining = /[\p{M}\u200B-\u200D\u2060-\u206F\uFE00-\uFE0F]/u;
const wide = /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const narrow = /[ .,:;'`|!iIjlt()[\]/·]/;

/** Share of the font size that a character takes, on the wide side of the usual sans-serif fonts. */
function share(character: string): number {
  if (combining.test(character)) return 0;
  if (wide.test(character)) return 1;
  if (narrow.test(character)) return 0.34;
  return /[A-ZmwMW%@—…]/.test(character) ? 0.78 : 0.585;
}

/** Width that a text needs at most in the usual fonts; a picture cannot ask the screen. */
export function textWidth(text: string, size: number): number {
  let sum = 0;
  for (const character of text) sum += share(character);
  return sum * size;
}

/** The text, or as much of its beginning as fits, with an ellipsis. An isolate that was opened is closed. */
export function fitText(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text;
  const room = width - share('…') * size;
  let out = '';
  let used = 0;
  for (const character of text) {
    used += share(character) * size;
    if (used > room) break;
    out += character;
  }
  const open = (out.match(/\u2068/g) ?? []).length - (out.match(/\u2069/g) ?? []).length;
  return out.trimEnd() + '…' + '\u2069'.repeat(Math.max(0, open));
}

/** A word that no line can hold, in parts that a line can. */
function brokenWord(word: string, width: number, size: number): string[] {
  if (textWidth(word, size) <= width) return [word];
  const parts: string[] = [];
  let piece = '';
  let used = 0;
  for (const character of word) {
    const wide = share(character) * size;
    if (used + wide > width && piece !== '') {
      parts.push(piece);
      [piece, used] = ['', 0];
    }
    piece += character;
    used += wide;
  }
  return [...parts, piece];
}

/** The text in lines of at most a width, at most so many of them, broken between words. */
export function wrapText(text: string, width: number, size: number, most: number): string[] {
  const lines: string[] = [];
  let line = '';
  const words = wordsOf(text).flatMap((word) => brokenWord(word, width, size));
  for (let i = 0; i < words.length; i++) {
    const joined = line === '' ? words[i]! : `${line} ${words[i]}`;
    if (line === '' || textWidth(joined, size) <= width) line = joined;
    else if (lines.length === most - 1) {
      line = `${line} ${words.slice(i).join(' ')}`;
      break;
    } else {
      lines.push(line);
      line = words[i]!;
    }
  }
  if (line !== '') lines.push(line);
  return lines.map((l) => fitText(l, width, size));
}
